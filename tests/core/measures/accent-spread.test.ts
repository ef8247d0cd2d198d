import { accentSpread } from '../../../src/core/measures/accent-spread.ts';
import { describeLevelSpread } from './level-spread.ts';

describeLevelSpread(accentSpread, 24, 'RLR');
