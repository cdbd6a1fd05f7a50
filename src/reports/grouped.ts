export { grouped } from '../statistics/summary/grouped.ts';
