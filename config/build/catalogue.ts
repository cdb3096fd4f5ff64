/**
 * `npm run catalogue`: builds the catalogue's tables in `config/data/`.
 *
 * @packageDocumentation
 */
import { writeFileSync } from "node:fs";
import { DATA_FOLDER, readCatalogueSources } from "./sources.ts";
import { catalogueTables } from "./tables.ts";

for (const [name, text] of Object.entries(catalogueTables(readCatalogueSources()))) {
  writeFileSync(new URL(name, DATA_FOLDER), text);
  process.stdout.write(`config/data/${name}: ${text.split("\n").length - 4} rows\n`);
}
