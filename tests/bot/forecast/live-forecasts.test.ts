/**
 * The real client against a stand-in on loopback: what it asks, what it survives, what it never does twice.
 *
 * @packageDocumentation
 */
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { type ForecastCache, memoryCache } from "../../../bot/forecast/cache.ts";
import { type ForecastSettings, openWeather, type Weather } from "../../../bot/forecast/open-forecasts.ts";
import { PATIENCE } from "../../../config/forecast-services.ts";
import { timerOf } from "../../timer.ts";
import { aerosolAnswer, metHours, threeModels } from "./invented-answers.ts";
import {
  cutOff,
  json,
  openStandIn,
  type Reply,
  type StandIn,
  silence,
  slowly,
  status,
  text,
} from "./stand-in.ts";

const PLACE = { latitudeDeg: 54.5123, longitudeDeg: -2.6432, elevationMetres: 300 };
const NOW = new Date("2026-10-10T16:00:00Z");
const HOUR_MS = 3_600_000;

let openMeteo: StandIn;
let air: StandIn;
let met: StandIn;
let weather: Weather;
let nowMs: number;
let cache: ForecastCache;
let warnings: string[];
let slept: number[];

function open(more: Partial<ForecastSettings> = {}): Weather {
  return openWeather({
    hosts: {
      openMeteo: openMeteo.base,
      airQuality: air.base,
      metNorway: met.base,
      geocoding: openMeteo.base,
    },
    contact: "club@example.org",
    cache,
    nowMs: () => nowMs,
    sleep: async (ms) => {
      slept.push(ms);
      nowMs += ms;
    },
    warn: (sentence) => warnings.push(sentence),
    patience: { ...PATIENCE, totalMs: 400 },
    budgetMs: 5000,
    ...more,
  });
}

beforeEach(async () => {
  [openMeteo, air, met] = await Promise.all([openStandIn(), openStandIn(), openStandIn()]);
  nowMs = NOW.getTime();
  cache = memoryCache();
  warnings = [];
  slept = [];
  openMeteo.answer(json(threeModels(20)));
  air.answer(json(aerosolAnswer(0.15)));
  met.answer(json(metHours(30)));
  weather = open();
});

afterEach(async () => {
  await weather.close();
  await Promise.all([openMeteo.close(), air.close(), met.close()]);
});

describe("forecasts.at, all well", () => {
  it("gives every provider's models, with credits", async () => {
    const report = await weather.forecasts.at(PLACE, NOW);
    expect(report.models.map(({ provider }) => provider)).toEqual([
      "Open-Meteo",
      "Open-Meteo",
      "Open-Meteo",
      "MET Norway",
      "Open-Meteo air quality",
    ]);
    expect(report.models[0]?.fetchedAt).toEqual(NOW);
    expect(report.problems).toEqual([]);
    expect(report.credits.join(" ")).toMatch(/Open-Meteo\.com.*MET Norway.*CAMS/);
  });

  it("asks in UTC, for rounded places, and says who asks", async () => {
    await weather.forecasts.at(PLACE, NOW);
    const [asked] = openMeteo.asked;
    expect(asked?.path).toBe("/v1/forecast");
    expect(asked?.query).toMatchObject({
      latitude: "54.5",
      longitude: "-2.6",
      timezone: "GMT",
      timeformat: "unixtime",
    });
    expect(asked?.query.models?.split(",").length).toBeGreaterThan(2);
    expect(met.asked[0]?.query).toEqual({ lat: "54.5", lon: "-2.6" });
    for (const { asked: all } of [openMeteo, air, met]) {
      expect(all[0]?.headers["user-agent"]).toMatch(/^Duskbell\/\d.* \(club@example\.org\)$/);
      expect(all[0]?.headers["accept-encoding"]).toContain("gzip");
    }
  });

  it("asks once for two at the same moment, and for neighbours of one cell", async () => {
    await Promise.all([
      weather.forecasts.at(PLACE, NOW),
      weather.forecasts.at({ ...PLACE, latitudeDeg: 54.54 }, NOW),
    ]);
    expect([openMeteo, air, met].map(({ asked }) => asked.length)).toEqual([1, 1, 1]);
  });

  it("asks again only after three hours, for aerosol after six", async () => {
    await weather.forecasts.at(PLACE, NOW);
    nowMs += 3 * HOUR_MS - 1;
    await weather.forecasts.at(PLACE, NOW);
    expect(openMeteo.asked).toHaveLength(1);
    nowMs += 1;
    await weather.forecasts.at(PLACE, NOW);
    expect([openMeteo, air, met].map(({ asked }) => asked.length)).toEqual([2, 1, 2]);
  });

  it("keeps its answers through a restart", async () => {
    await weather.forecasts.at(PLACE, NOW);
    await weather.close();
    weather = open();
    const report = await weather.forecasts.at(PLACE, NOW);
    expect(report.models).toHaveLength(5);
    expect(openMeteo.asked).toHaveLength(1);
  });

  it("asks nothing about a night that no forecast reaches", async () => {
    for (const from of ["2025-10-10T16:00:00Z", "2027-10-10T16:00:00Z"]) {
      const report = await weather.forecasts.at(PLACE, new Date(from));
      expect(report.models).toEqual([]);
      expect(report.problems).toHaveLength(1);
    }
    expect(openMeteo.asked).toHaveLength(0);
  });
});

describe("forecasts.at, a service in trouble", () => {
  const trouble: readonly (readonly [string, Reply, number, string])[] = [
    ["is down", status(500, "Something went wrong."), 3, "is failing"],
    ["is overloaded", status(503, "The service is overloaded"), 3, "is busy"],
    ["cuts its answer off", cutOff(threeModels(20)), 3, "could not be reached"],
    [
      "ends its answer in an apology",
      text('{"latitude":54,"hourly":{"ti Unexpected error'),
      3,
      "cannot be read",
    ],
    ["answers with no JSON number", text('{"latitude":nan}'), 3, "cannot be read"],
    ["answers with nothing", text(""), 3, "cannot be read"],
    ["answers for too many places", json([threeModels(1), threeModels(2)]), 3, "cannot be read"],
    ["never answers", silence(), 3, "did not answer in time"],
    ["refuses the request", status(400, '{"error":true,"reason":"no"}'), 1, "refused the request (400)"],
    ["refuses us", status(403, "<html>"), 1, "refused the request (403)"],
    [
      "sends us elsewhere",
      status(303, "", { location: "http://127.0.0.1:1/" }),
      1,
      "refused the request (303)",
    ],
  ];

  it.each(trouble)("gives the other's forecast when one %s", async (_, reply, tries, why) => {
    openMeteo.answer(reply);
    const report = await weather.forecasts.at(PLACE, NOW);
    expect(report.models.map(({ provider }) => provider)).toEqual(["MET Norway", "Open-Meteo air quality"]);
    expect(report.problems.join(" ")).toContain(
      `Open-Meteo ${why === "cannot be read" ? "sent an answer that " : ""}${why}`,
    );
    expect(openMeteo.asked).toHaveLength(tries);
  });

  it("gives no models and says why when all are down, and does not throw", async () => {
    for (const service of [openMeteo, air, met]) service.answer(status(500));
    const report = await weather.forecasts.at(PLACE, NOW);
    expect(report).toMatchObject({ models: [], credits: [] });
    expect(report.problems).toHaveLength(3);
  });

  it("recovers by trying again, with growing waits", async () => {
    openMeteo.answer(status(500), status(502), json(threeModels(20)));
    air.answer(json(aerosolAnswer(0.1)));
    const report = await weather.forecasts.at(PLACE, NOW);
    expect(report.models).toHaveLength(5);
    expect(slept).toHaveLength(2);
    expect(slept[0]).toBeGreaterThanOrEqual(350);
    expect(slept[0]).toBeLessThanOrEqual(1050);
    expect(slept[1]).toBeGreaterThanOrEqual(700);
    expect(slept[1]).toBeLessThanOrEqual(2100);
  });

  it("waits as long as Retry-After asks", async () => {
    met.answer(status(429, "slow down", { "retry-after": "7" }), json(metHours(30)));
    const report = await weather.forecasts.at(PLACE, NOW);
    expect(report.models).toHaveLength(5);
    expect(slept).toContain(7000);
  });

  it("leaves a service alone that asks for a long wait, and comes back after", async () => {
    openMeteo.answer(
      status(
        429,
        '{"error":true,"reason":"Hourly API request limit exceeded. Please try again in the next hour."}',
      ),
    );
    await weather.forecasts.at(PLACE, NOW);
    await weather.forecasts.at({ ...PLACE, latitudeDeg: 50 }, NOW);
    expect(openMeteo.asked).toHaveLength(1);
    openMeteo.answer(json(threeModels(20)));
    nowMs += HOUR_MS;
    const report = await weather.forecasts.at(PLACE, NOW);
    expect(report.models.some(({ provider }) => provider === "Open-Meteo")).toBe(true);
  });

  it("does not ask again at once for a place that just failed", async () => {
    openMeteo.answer(status(400));
    await weather.forecasts.at(PLACE, NOW);
    const report = await weather.forecasts.at(PLACE, NOW);
    expect(openMeteo.asked).toHaveLength(1);
    expect(report.problems.join(" ")).toContain("refused the request");
  });

  it("uses an old answer when there is no new one, and says how old", async () => {
    await weather.forecasts.at(PLACE, NOW);
    nowMs += 7 * HOUR_MS;
    openMeteo.answer(status(500));
    const report = await weather.forecasts.at(PLACE, NOW);
    expect(report.models).toHaveLength(5);
    expect(report.problems).toEqual(["Open-Meteo is failing: its forecast of 7 h ago is used."]);
  });

  it("does not use an answer two days old", async () => {
    await weather.forecasts.at(PLACE, NOW);
    nowMs += 49 * HOUR_MS;
    for (const service of [openMeteo, air, met]) service.answer(status(500));
    const report = await weather.forecasts.at(PLACE, new Date(nowMs));
    expect(report.models).toEqual([]);
  });

  it("reads no more of a body than is allowed", async () => {
    await weather.close();
    weather = open({ patience: { ...PATIENCE, bodyBytesAtMost: 200_000 } });
    openMeteo.answer((_asked, response) => {
      response.writeHead(200, { "content-type": "application/json" });
      const pour = () => {
        while (response.write("x".repeat(65_536))) if (response.destroyed) return;
        response.once("drain", pour);
      };
      pour();
    });
    const report = await weather.forecasts.at(PLACE, NOW);
    expect(report.problems[0]).toContain("far too much");
    expect(openMeteo.asked).toHaveLength(1);
  });

  it("answers within its budget, and has what came late for the next question", async () => {
    await weather.close();
    weather = open({ budgetMs: 100, patience: PATIENCE });
    openMeteo.answer(slowly(2000, json(threeModels(20))));
    const late = timerOf(1500);
    const report = await weather.forecasts.at(PLACE, NOW);
    expect(late()).toBe(false);
    expect(report.problems).toEqual(["Open-Meteo has not answered yet."]);
    await new Promise((resolve) => setTimeout(resolve, 2500));
    expect((await weather.forecasts.at(PLACE, NOW)).models).toHaveLength(5);
    expect(openMeteo.asked).toHaveLength(1);
  });

  it("survives a cache that fails", async () => {
    await weather.close();
    const broken = async () => {
      throw new Error("disk full");
    };
    weather = open({ cache: { get: broken, put: broken } });
    expect((await weather.forecasts.at(PLACE, NOW)).models).toHaveLength(5);
    expect(warnings.join(" ")).toContain("disk full");
  });

  it("survives a cache that holds nonsense", async () => {
    await weather.close();
    const kept = { body: "{", fetchedAt: new Date(nowMs), expiresAt: new Date(nowMs), lastModified: null };
    weather = open({ cache: { get: async () => kept, put: async () => undefined } });
    const report = await weather.forecasts.at(PLACE, NOW);
    expect(report.models).toEqual([]);
    expect(report.problems).toHaveLength(3);
  });
});

describe("MET Norway's own rules", () => {
  const stamp = "Sat, 10 Oct 2026 15:40:07 GMT";

  it("are kept: nothing before Expires, then the exact Last-Modified, and 304 keeps the old body", async () => {
    const expires = new Date(nowMs + 4 * HOUR_MS).toUTCString();
    met.answer(json(metHours(30), { "last-modified": stamp, expires }));
    await weather.forecasts.at(PLACE, NOW);
    nowMs += 4 * HOUR_MS - 2000;
    await weather.forecasts.at(PLACE, NOW);
    expect(met.asked).toHaveLength(1);
    nowMs += 4000;
    met.answer(status(304, "", { expires: new Date(nowMs + HOUR_MS).toUTCString() }));
    const report = await weather.forecasts.at(PLACE, NOW);
    expect(met.asked).toHaveLength(2);
    expect(met.asked[1]?.headers["if-modified-since"]).toBe(stamp);
    const model = report.models.find(({ provider }) => provider === "MET Norway");
    expect(model?.hours).toHaveLength(24);
    expect(model?.fetchedAt).toEqual(new Date(nowMs));
    expect(report.problems).toEqual([]);
  });

  it("are heard: a version that will end is warned of", async () => {
    met.answer(json(metHours(30), {}, 203));
    const report = await weather.forecasts.at(PLACE, NOW);
    expect(report.models).toHaveLength(5);
    expect(warnings.join(" ")).toContain("is to end");
  });
});

describe("forecasts.prefetch", () => {
  const places = Array.from({ length: 120 }, (_, index) => ({
    latitudeDeg: 40 + index / 10,
    longitudeDeg: 5,
    elevationMetres: 0,
  }));
  const forEach: Reply = (asked, response) => {
    const count = asked.query.latitude?.split(",").length ?? 0;
    const one = asked.path.includes("air") ? aerosolAnswer(0.1) : threeModels(20);
    json(count === 1 ? one : Array.from({ length: count }, () => one))(asked, response);
  };

  it("asks for many places together, keeps each, and paces itself", async () => {
    openMeteo.answer(forEach);
    air.answer(forEach);
    expect(await weather.forecasts.prefetch(places)).toEqual([]);
    expect(openMeteo.asked.map(({ query }) => query.latitude?.split(",").length)).toEqual([50, 50, 20]);
    expect(met.asked).toHaveLength(120);
    // 120 places of 4.8 each are 576: more than the 500 of a minute, so the last batch waits for the first to pass.
    expect(Math.max(...slept)).toBeGreaterThan(30_000);
    const before = openMeteo.asked.length;
    const [last] = places.slice(-1);
    if (last !== undefined) expect((await weather.forecasts.at(last, NOW)).models).toHaveLength(5);
    expect(openMeteo.asked).toHaveLength(before);
  }, 30_000);

  it("asks for a cell once, however many sites lie in it, and hourly only while watched", async () => {
    const neighbours = Array.from({ length: 30 }, () => PLACE);
    await weather.forecasts.prefetch(neighbours);
    expect(openMeteo.asked).toHaveLength(1);
    nowMs += HOUR_MS;
    await weather.forecasts.prefetch(neighbours);
    expect(openMeteo.asked).toHaveLength(1);
    await weather.forecasts.prefetch(neighbours, { watched: true });
    expect(openMeteo.asked).toHaveLength(2);
    expect(air.asked).toHaveLength(1);
  });

  it("says what failed, and asks no further of a service that refuses", async () => {
    openMeteo.answer(status(403));
    air.answer(forEach);
    const failures = await weather.forecasts.prefetch(places);
    expect(failures.length).toBeGreaterThan(0);
    expect(openMeteo.asked).toHaveLength(1);
  }, 30_000);
});

describe("places.find", () => {
  const found = {
    generationtime_ms: 0.5,
    results: [
      {
        name: "Fell End",
        latitude: 54.5,
        longitude: -2.6,
        elevation: 310,
        timezone: "Europe/London",
        admin1: "England",
        country: "United Kingdom",
      },
      { name: "No zone", latitude: 1, longitude: 1 },
      { name: "Nowhere", latitude: 200, longitude: 1, timezone: "UTC" },
    ],
  };

  it("gives places, best first, and asks for each name once", async () => {
    openMeteo.answer(json(found));
    const places = await weather.places.find("  Fell   End ");
    expect(places).toEqual([
      {
        name: "Fell End, England, United Kingdom",
        latitudeDeg: 54.5,
        longitudeDeg: -2.6,
        elevationMetres: 310,
        timeZone: "Europe/London",
      },
    ]);
    await weather.places.find("fell end");
    expect(openMeteo.asked).toHaveLength(1);
    expect(openMeteo.asked[0]?.query.name).toBe("Fell End");
  });

  it("gives none for a name that nobody knows", async () => {
    openMeteo.answer(json({ generationtime_ms: 0.4 }));
    expect(await weather.places.find("Xyzzy")).toEqual([]);
    expect(await weather.places.find("x")).toEqual([]);
    expect(openMeteo.asked).toHaveLength(1);
  });

  it("says so when names cannot be looked up", async () => {
    openMeteo.answer(status(500));
    await expect(weather.places.find("Fell End")).rejects.toThrow(/give latitude, longitude instead/);
  });

  it("sends what was typed as a name alone", async () => {
    openMeteo.answer(json({ generationtime_ms: 0.4 }));
    await weather.places.find("a&count=99#/../x");
    expect(openMeteo.asked[0]?.query.name).toBe("a&count=99#/../x");
    expect(openMeteo.asked[0]?.query.count).toBe("10");
  });
});
