import { spawn } from "node:child_process";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it, onTestFinished } from "vitest";
import { storeBooks } from "../../../bot/store/books.ts";
import { removeClub } from "../../../bot/store/club-rows.ts";
import { forecastShelf } from "../../../bot/store/forecast-shelf.ts";
import { MEMBER_TABLES } from "../../../bot/store/member-book.ts";
import { MIGRATIONS, migrate } from "../../../bot/store/migrations.ts";
import { openStore, type Store } from "../../../bot/store/store.ts";
import { WorldError } from "../../../commands/ask-error.ts";
import type { Site } from "../../../core/site.ts";
import { bytesOf, temporaryFolder } from "./temporary-folder.ts";

const NOW = Date.UTC(2026, 9, 3, 20);

const MOOR: Site = {
  name: "High Moor",
  latitudeDeg: 54.4962,
  longitudeDeg: -2.6049,
  elevationMetres: 310,
  timeZone: "Europe/London",
  skyline: [
    { azimuthDeg: 90, altitudeDeg: 4 },
    { azimuthDeg: 180, altitudeDeg: 17.5 },
  ],
  sky: { kind: "reading", magArcsec2: 21.2 },
  brightDirections: [{ azimuthDeg: 120, brighterMag: 0.8 }],
  seeingArcsec: 2.8,
};

async function openIn(folder: string): Promise<Store> {
  const store = await openStore(folder, NOW);
  onTestFinished(() => store.close());
  return store;
}

describe("openStore", () => {
  it("keeps a site through closing and opening, its coordinates rounded to 0.01°", async () => {
    const folder = temporaryFolder();
    const first = await openStore(folder, NOW);
    await storeBooks(first.db, () => NOW).sites.save("fell-end", "me", MOOR);
    await first.close();

    const again = await openIn(folder);
    const [saved] = await storeBooks(again.db, () => NOW).sites.list("fell-end", "me");
    expect(saved?.site).toEqual({ ...MOOR, latitudeDeg: 54.5, longitudeDeg: -2.6 });
    expect(saved).toMatchObject({ ownerId: "me", isDefault: true, shared: false });
  });

  it("writes nothing when it opens a store that is up to date", async () => {
    const folder = temporaryFolder();
    await (await openStore(folder, NOW)).close();
    const before = bytesOf(folder);
    await (await openStore(folder, NOW + 1000)).close();
    expect(bytesOf(folder)).toEqual(before);
  });

  it("says in one sentence that a file is no database, and leaves it as it was", async () => {
    const folder = temporaryFolder();
    const path = join(folder, "duskbell.sqlite");
    writeFileSync(path, "this was never a database, only words ".repeat(200));
    const before = readFileSync(path);
    const refused = openStore(folder, NOW);
    await expect(refused).rejects.toThrow(WorldError);
    await expect(refused).rejects.toThrow(/duskbell\.sqlite is damaged or no database: put a backup/);
    expect(readFileSync(path)).toEqual(before);
  });

  it("says so when a page in the middle of the file has been overwritten", async () => {
    const folder = temporaryFolder();
    const store = await openStore(folder, NOW);
    await storeBooks(store.db, () => NOW).sites.save("fell-end", "me", MOOR);
    await store.close();
    const path = join(folder, "duskbell.sqlite");
    const bytes = readFileSync(path);
    bytes.fill(0xa5, 4096);
    writeFileSync(path, bytes);
    const asked = openStore(folder, NOW).then(async (damaged) => {
      onTestFinished(() => damaged.close());
      return storeBooks(damaged.db, () => NOW).sites.list("fell-end", "me");
    });
    await expect(asked).rejects.toThrow(WorldError);
  });

  it("refuses a store that a newer program wrote", async () => {
    const folder = temporaryFolder();
    const store = await openStore(folder, NOW);
    await store.db
      .insertInto("schema_versions")
      .values({ number: 9999, name: "from-the-future", applied_ms: NOW })
      .execute();
    await store.close();
    await expect(openStore(folder, NOW)).rejects.toThrow(/newer Duskbell/);
  });

  it("says which folder cannot be made", async () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, "a-file"), "");
    await expect(openStore(join(folder, "a-file", "data"), NOW)).rejects.toThrow(/DUSKBELL_DATA/);
    await expect(openStore(join(folder, "a-file"), NOW)).rejects.toThrow(/DUSKBELL_DATA/);
  });

  it.runIf(process.platform === "linux")("does not try for ever where no folder can be made", async () => {
    await expect(openStore("/proc/duskbell", NOW)).rejects.toThrow(/DUSKBELL_DATA/);
  });

  it("makes the folders above it as well", async () => {
    const folder = join(temporaryFolder(), "a", "b", "c");
    const store = await openStore(folder, NOW);
    await store.close();
    expect(existsSync(join(folder, "duskbell.sqlite"))).toBe(true);
  });
});

describe("migrate", () => {
  it("numbers its steps from 1 without a gap", () => {
    expect(MIGRATIONS.map(({ number }) => number)).toEqual(MIGRATIONS.map((_, index) => index + 1));
  });

  it("leaves the old shape whole when a step fails half way", async () => {
    const store = await openIn(temporaryFolder());
    const next = MIGRATIONS.length + 1;
    const failing = {
      number: next,
      name: "fails",
      async up(db: Store["db"]) {
        await db.schema.createTable("half_done").addColumn("id", "integer").execute();
        throw new Error("the lights went out");
      },
    };
    await expect(migrate(store.db, NOW, [...MIGRATIONS, failing])).rejects.toThrow("the lights went out");
    const tables = await store.db.introspection.getTables();
    expect(tables.map(({ name }) => name)).not.toContain("half_done");
    const versions = await store.db.selectFrom("schema_versions").select("number").execute();
    expect(versions.map(({ number }) => number)).not.toContain(next);
  });
});

describe("the site book", () => {
  it("replaces a site of the same name whatever its case, spaces and hyphens, and keeps its id", async () => {
    const { sites } = storeBooks((await openIn(temporaryFolder())).db, () => NOW);
    const first = await sites.save("fell-end", "me", MOOR);
    const second = await sites.save("fell-end", "me", { ...MOOR, name: "high-MOOR", elevationMetres: 320 });
    expect(second.id).toBe(first.id);
    expect(second.isDefault).toBe(true);
    expect(await sites.list("fell-end", "me")).toHaveLength(1);
  });

  it("keeps one default per member", async () => {
    const { sites } = storeBooks((await openIn(temporaryFolder())).db, () => NOW);
    await sites.save("fell-end", "me", MOOR);
    await sites.save("fell-end", "me", { ...MOOR, name: "Garden" }, { makeDefault: true });
    const saved = await sites.list("fell-end", "me");
    expect(saved.filter(({ isDefault }) => isDefault).map(({ site }) => site.name)).toEqual(["Garden"]);
  });

  it("shows a member no other member's site unless it is shared, and no other club's at all", async () => {
    const { sites } = storeBooks((await openIn(temporaryFolder())).db, () => NOW);
    await sites.save("fell-end", "wren", { ...MOOR, name: "Wren's garden" });
    await sites.save("fell-end", "wren", { ...MOOR, name: "Club field" }, { shared: true });
    await sites.save("other-club", "me", { ...MOOR, name: "Elsewhere" }, { shared: true });
    const seen = await sites.list("fell-end", "me");
    expect(seen.map(({ site }) => site.name)).toEqual(["Club field"]);
  });

  it("removes nobody else's site", async () => {
    const { sites } = storeBooks((await openIn(temporaryFolder())).db, () => NOW);
    const { id } = await sites.save("fell-end", "wren", MOOR);
    await sites.remove("fell-end", "me", id);
    await sites.remove("other-club", "wren", id);
    expect(await sites.list("fell-end", "wren")).toHaveLength(1);
    await sites.remove("fell-end", "wren", id);
    expect(await sites.list("fell-end", "wren")).toHaveLength(0);
  });
});

describe("the member book", () => {
  it("knows every table that holds something of a member's", async () => {
    const store = await openIn(temporaryFolder());
    const tables = await store.db.introspection.getTables();
    const holding = tables
      .filter(({ columns }) => columns.some(({ name }) => /^(owner|member|asker|user)_id$/.test(name)))
      .map(({ name }) => name);
    expect(holding.length).toBeGreaterThan(0);
    expect(MEMBER_TABLES.map(({ table }) => table)).toEqual(expect.arrayContaining(holding));
  });

  it("exports a member's own rows and erases them, and nobody else's", async () => {
    const { sites, members } = storeBooks((await openIn(temporaryFolder())).db, () => NOW);
    await sites.save("fell-end", "me", MOOR);
    await sites.save("fell-end", "wren", { ...MOOR, name: "Wren's garden" });
    const mine = await members.exportAll("fell-end", "me");
    expect(mine.sites).toMatchObject([
      { name: "High Moor", latitudeDeg: 54.5, skyline: MOOR.skyline, createdAt: "2026-10-03T20:00:00.000Z" },
    ]);
    expect(JSON.stringify(mine)).not.toContain("Wren");

    await members.eraseAll("fell-end", "me");
    expect(Object.values(await members.exportAll("fell-end", "me")).flat()).toEqual([]);
    expect(await sites.list("fell-end", "wren")).toHaveLength(1);
  });

  it("goes with its club", async () => {
    const store = await openIn(temporaryFolder());
    const { sites, members } = storeBooks(store.db, () => NOW);
    await sites.save("fell-end", "me", MOOR);
    await sites.save("other-club", "me", MOOR);
    await removeClub(store.db, "fell-end");
    expect(Object.values(await members.exportAll("fell-end", "me")).flat()).toEqual([]);
    expect(await sites.list("other-club", "me")).toHaveLength(1);
  });
});

describe("forecastShelf", () => {
  it("gives back the answer last put under a key, and drops those too old to be shown", async () => {
    const shelf = forecastShelf((await openIn(temporaryFolder())).db);
    const kept = {
      body: '{"hourly":{}}',
      fetchedAt: new Date(NOW),
      expiresAt: new Date(NOW + 3_600_000),
      lastModified: "Sat, 03 Oct 2026 19:31:05 GMT",
    };
    expect(await shelf.get("a-provider 54.5 -2.6")).toBeNull();
    await shelf.put("a-provider 54.5 -2.6", { ...kept, body: "older" });
    await shelf.put("a-provider 54.5 -2.6", kept);
    expect(await shelf.get("a-provider 54.5 -2.6")).toEqual(kept);
    const days = (count: number) => ({ ...kept, fetchedAt: new Date(NOW + count * 86_400_000) });
    await shelf.put("a-provider 10 20", days(2));
    expect(await shelf.get("a-provider 54.5 -2.6")).toEqual(kept);
    await shelf.put("a-provider 10 20", days(3));
    expect(await shelf.get("a-provider 54.5 -2.6")).toBeNull();
  });
});

describe("a store shared by processes", { timeout: 60_000 }, () => {
  it("takes every row of four writers that start at once on an empty folder", async () => {
    const folder = temporaryFolder();
    const writer = join(import.meta.dirname, "site-writer.ts");
    const rowsEach = 12;
    const outcomes = await Promise.all(
      ["a", "b", "c", "d"].map(
        (name) =>
          new Promise<{ code: number | null; said: string }>((resolve) => {
            const child = spawn(process.execPath, [
              "--import",
              "tsx",
              writer,
              folder,
              name,
              String(rowsEach),
            ]);
            let said = "";
            child.stderr.on("data", (chunk) => {
              said += chunk;
            });
            child.on("close", (code) => resolve({ code, said }));
          }),
      ),
    );
    expect(outcomes).toEqual(outcomes.map(() => ({ code: 0, said: "" })));
    const { sites } = storeBooks((await openIn(folder)).db, () => NOW);
    for (const name of ["a", "b", "c", "d"]) {
      expect(await sites.list("fell-end", name)).toHaveLength(rowsEach);
    }
  });
});
