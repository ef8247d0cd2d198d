import { tapSpread } from '../../../src/core/measures/tap-spread.ts';
import { describeLevelSpread } from './level-spread.ts';

describeLevelSpread(tapSpread, 25, '>R>L>R');
