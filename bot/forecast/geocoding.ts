/**
 * Names of places to coordinates, through Open-Meteo's geocoding.
 *
 * @packageDocumentation
 */
import { WorldError } from "../../commands/ask-error.ts";
import type { FoundPlace, Places } from "../../commands/context.ts";
import { member, numberOrNull, parsedJson } from "./json-shape.ts";
import { type PoliteHost, UnreadableAnswer } from "./polite-host.ts";

/** The service finds nothing for fewer letters. */
const LEAST_LETTERS = 2;
const LONGEST_NAME = 100;
const PLACES_AT_MOST = 10;
/** Names remembered while the process lives. */
const REMEMBERED_AT_MOST = 200;

/** Places through the service; each name is asked once. */
export function geocodedPlaces(host: PoliteHost, base: string): Places {
  const remembered = new Map<string, readonly FoundPlace[]>();
  return {
    async find(name) {
      const wanted = name.trim().replace(/\s+/g, " ");
      if (wanted.length < LEAST_LETTERS || wanted.length > LONGEST_NAME) return [];
      const key = wanted.toLowerCase();
      const known = remembered.get(key);
      if (known !== undefined) return known;
      const url = `${base}/v1/search?name=${encodeURIComponent(wanted)}&count=${PLACES_AT_MOST}&language=en&format=json`;
      const hearing = await host.ask({ url, weight: 1, read: readPlaces });
      if (hearing.kind !== "heard") {
        const why = hearing.kind === "unheard" ? hearing.why : "sent nothing";
        throw new WorldError(
          `Place names cannot be looked up just now (Open-Meteo ${why}): give latitude, longitude instead.`,
        );
      }
      if (remembered.size >= REMEMBERED_AT_MOST) remembered.clear();
      remembered.set(key, hearing.value);
      return hearing.value;
    },
  };
}

/** No network: no place is known by name. */
export const NO_PLACES: Places = {
  async find() {
    return [];
  },
};

/**
 * @throws UnreadableAnswer when the text is no answer of the service's
 */
function readPlaces(text: string): readonly FoundPlace[] {
  const answer = parsedJson(text);
  const results = member(answer, "results");
  // Without a match the service leaves the list out.
  if (results === undefined && member(answer, "generationtime_ms") !== undefined) return [];
  if (!Array.isArray(results)) throw new UnreadableAnswer("no list of places");
  return results.flatMap(placeOf);
}

function placeOf(result: unknown): FoundPlace[] {
  const latitudeDeg = numberOrNull(member(result, "latitude"));
  const longitudeDeg = numberOrNull(member(result, "longitude"));
  const name = member(result, "name");
  const timeZone = member(result, "timezone");
  if (latitudeDeg === null || Math.abs(latitudeDeg) > 90) return [];
  if (longitudeDeg === null || Math.abs(longitudeDeg) > 180) return [];
  if (typeof name !== "string" || typeof timeZone !== "string") return [];
  const region = member(result, "admin1");
  const country = member(result, "country");
  const parts = [name, region, country].filter((part) => typeof part === "string" && part !== "");
  return [
    {
      name: [...new Set(parts)].join(", "),
      latitudeDeg,
      longitudeDeg,
      elevationMetres: numberOrNull(member(result, "elevation")) ?? 0,
      timeZone,
    },
  ];
}
