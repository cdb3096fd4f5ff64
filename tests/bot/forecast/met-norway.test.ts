/**
 * MET Norway's answers read without a network. The shape is the service's, the values are invented.
 *
 * @packageDocumentation
 */
import { describe, expect, it } from "vitest";
import { readMetNorway } from "../../../bot/forecast/met-norway.ts";
import { UnreadableAnswer } from "../../../bot/forecast/polite-host.ts";
import { metAnswer } from "./invented-answers.ts";

const COARSENING = metAnswer([
  {
    time: "2026-10-12T22:00:00Z",
    instant: { cloud_area_fraction: 10, air_temperature: 5, wind_speed: 2, fog_area_fraction: 0 },
    next_1_hours: { precipitation_amount: 0.3, probability_of_precipitation: 30 },
    next_6_hours: { precipitation_amount: 0.9 },
  },
  {
    time: "2026-10-12T23:00:00Z",
    instant: { cloud_area_fraction: 20, air_temperature: 4, wind_speed: 3 },
    next_1_hours: { precipitation_amount: 0 },
  },
  {
    time: "2026-10-13T00:00:00Z",
    instant: { cloud_area_fraction: 30, air_temperature: 4, wind_speed: 3 },
    next_6_hours: { precipitation_amount: 1.2, probability_of_precipitation: 55 },
  },
  {
    time: "2026-10-13T06:00:00Z",
    instant: { cloud_area_fraction: 60, air_temperature: 3, wind_speed: 4 },
  },
]);

describe("readMetNorway", () => {
  it("gives rain to the hour, or the step, before each instant", () => {
    const hours = readMetNorway(COARSENING).models[0]?.hours ?? [];
    expect(hours.map((hour) => hour.precipitationMm)).toEqual([null, 0.3, 0, 1.2]);
    expect(hours.map((hour) => hour.precipitationProbabilityPercent)).toEqual([null, 30, null, 55]);
  });

  it("takes what vanishes in the later part as unknown", () => {
    const hours = readMetNorway(COARSENING).models[0]?.hours ?? [];
    expect(hours.map((hour) => hour.fogPercent)).toEqual([0, null, null, null]);
    expect(hours[0]?.gustMetresPerSecond).toBeNull();
  });

  it("knows when the model was issued, and where its layers part", () => {
    expect(readMetNorway(COARSENING).models[0]).toMatchObject({
      provider: "MET Norway",
      issuedAt: new Date("2026-10-10T11:12:13Z"),
      fetchedAt: null,
      layerBoundariesMetres: [2000, 5000],
    });
  });

  it("reads a changed unit, and refuses one it does not know", () => {
    const entry = { time: "2026-10-12T22:00:00Z", instant: { wind_speed: 36, cloud_area_fraction: 10 } };
    expect(readMetNorway(metAnswer([entry], { wind_speed: "km/h" })).models[0]?.hours[0]).toMatchObject({
      windMetresPerSecond: 10,
    });
    const odd = readMetNorway(metAnswer([entry], { wind_speed: "bft" }));
    expect(odd.models[0]?.hours[0]).toMatchObject({ windMetresPerSecond: null, cloudPercent: 10 });
    expect(odd.problems).toEqual(["MET Norway gave wind in “bft”: it is not used."]);
  });

  it("ignores fields that it never heard of, and details left out", () => {
    const answer = metAnswer([
      { time: "2026-10-12T22:00:00Z", instant: { cloud_area_fraction: 10, apparent_something: 3 } },
    ]);
    expect(readMetNorway(answer).models[0]?.hours).toHaveLength(1);
    const bare = { properties: { timeseries: [{ time: "2026-10-12T22:00:00Z", data: {} }] } };
    expect(readMetNorway(bare).models).toEqual([]);
  });

  it.each([
    ["no series", { properties: {} }],
    ["nothing", null],
    ["a time that is none", { properties: { timeseries: [{ time: "noon", data: {} }] } }],
    [
      "times out of order",
      metAnswer([
        { time: "2026-10-12T22:00:00Z", instant: { cloud_area_fraction: 10 } },
        { time: "2026-10-12T21:00:00Z", instant: { cloud_area_fraction: 10 } },
      ]),
    ],
  ])("refuses %s", (_, answer) => {
    expect(() => readMetNorway(answer)).toThrow(UnreadableAnswer);
  });
});
