import { expect, it } from 'vitest';
import { kindOfTable } from '../../src/logs/kind.ts';

// The headers of the contract's plain forms.
it.each([
  ['drop,time,series,specimen,site,planned height,height,mass,pressure,outcome', 'drops'],
  ['time,speed,load,pressure,tyre temperature,ambient temperature,distance,state', 'drum samples'],
  ['elapsed,speed,load', 'drum samples'],
  ['specimen,survived,failed,cause', 'drum outcomes'],
  ['specimen,construction,mass,batch,cured', 'specimens'],
  ['specimen,height', null],
  ['', null],
])('%s → %s', (header, kind) => {
  expect(kindOfTable(header.split(','))).toBe(kind);
});
