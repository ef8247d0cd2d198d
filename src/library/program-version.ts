export { version as programVersion } from '../../package.json';
