/**
 * A process that saves so many sites, for the test of several on one file.
 *
 * @packageDocumentation
 */
import { storeBooks } from "../../../bot/store/books.ts";
import { openStore } from "../../../bot/store/store.ts";

const [folder = "", member = "", rows = "0"] = process.argv.slice(2);
const store = await openStore(folder, 0);
const { sites } = storeBooks(store.db, () => 0);
for (let row = 0; row < Number(rows); row++) {
  await sites.save("fell-end", member, {
    name: `Site ${row}`,
    latitudeDeg: 54.5,
    longitudeDeg: -2.6,
    elevationMetres: 0,
    timeZone: "Europe/London",
    skyline: [],
    sky: null,
    brightDirections: [],
    seeingArcsec: null,
  });
}
await store.close();
