// One query over a drum log, for bench/drum.mjs: `node bench/drum-duckdb.mjs MODULE LOG`.
import { createRequire } from 'node:module';

const [module, path] = process.argv.slice(2);
const { DuckDBInstance } = createRequire(import.meta.url)(module);
const instance = await DuckDBInstance.create(':memory:', { threads: '2' });
const connection = await instance.connect();
const before = process.cpuUsage();
const begin = performance.now();
const reader = await connection.runAndReadAll(`
  select count(*), sum("speed [km/h]") filter (where "load [N]" between 637 and 663),
         max("speed [km/h]"), max("load [N]"), avg("pressure [bar]")
  from read_csv('${path.replaceAll("'", "''")}')`);
const rows = Number(reader.getRows()[0][0]);
const wall = performance.now() - begin;
const { user, system } = process.cpuUsage(before);
const memory = process.resourceUsage().maxRSS / 1000;
process.stdout.write(JSON.stringify({ rows, wall, cpu: (user + system) / 1000, memory }));
