/**
 * One evening run for 1,000 members at 300 sites in 25 clubs, while somebody keeps typing.
 *
 * Everything is the bot's own: store, weather services (answered by a stand-in at
 * their real pace), posts and charts, Discord's client over real HTTP and WebSocket. The
 * processor time counts both stand-ins too, which live in the same process.
 *
 * @packageDocumentation
 */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import type { World } from "../../bot/world.ts";
import type { Settings } from "../../config/settings.ts";
import type { Site } from "../../core/site.ts";
import { Person } from "../bot/discord/stand-in/person.ts";
import { type StandIn, startStandIn } from "../bot/discord/stand-in/stand-in.ts";
import type { Channel } from "../bot/discord/stand-in/state.ts";
import { metAnswer, openMeteoAnswer } from "../bot/forecast/invented-answers.ts";
import { type Asked, json, openStandIn, type Reply } from "../bot/forecast/stand-in.ts";
import type { Measured } from "./measured.ts";

/** The compiled bot, as it runs. */
const DIST = new URL("../../dist/", import.meta.url);

const CLUBS = 25;
const SITES_A_CLUB = 12;
const MEMBERS_A_CLUB = 40;
const HOUR_MS = 3_600_000;
const HOURS = 72;
const TYPE_EVERY_MS = 200;
/** Typing is measured alone for so long, to be taken off the run. */
const TYPING_ALONE_MS = 15_000;

export async function eveningRun(): Promise<readonly Measured[]> {
  const load = (path: string) => import(new URL(path, DIST).href);
  const { startDiscord }: typeof import("../../bot/discord/start.ts") = await load("bot/discord/start.js");
  const { openWorld }: typeof import("../../bot/world.ts") = await load("bot/world.js");
  const folder = mkdtempSync(join(tmpdir(), "bench-evening-"));
  const discord = await startStandIn();
  const weather = await openStandIn();
  weather.answer(clearSky);
  const settings = settingsFor(discord, weather.base, folder);
  const world = await openWorld(settings);
  const channels = await foundClubs(discord, world);
  const bot = await startDiscord(settings, world, { schedule: false, log: () => undefined });

  const typist = startTyping(discord, channels[0]);
  await sleep(2000);
  const typing = await processorOf(() => sleep(TYPING_ALONE_MS));
  const running = await processorOf(() => bot.tick());
  const typed = (typing.processor / typing.seconds) * running.seconds;
  const waits = (await typist.stop()).sort((one, other) => one - other);
  const posts = channels.reduce((sum, channel) => sum + discord.publicMessages(channel).length, 0);
  const memoryMb = process.memoryUsage().rss / 1e6;

  await bot.stop();
  await world.close();
  await discord.stop();
  await weather.close();
  rmSync(folder, { recursive: true, force: true });
  if (posts < CLUBS) throw new Error(`only ${posts} of ${CLUBS} clubs had their post`);
  const note =
    `${posts} messages, ${weather.asked.length} calls to the services in ${running.seconds.toFixed(0)} s; ` +
    `without the ${typed.toFixed(1)} s that typing alone takes`;
  return [
    { what: "an evening run, processor", value: running.processor - typed, unit: "s", budget: 10, note },
    {
      what: "a completion meanwhile, p99",
      value: waits[Math.floor(waits.length * 0.99)] ?? Number.NaN,
      unit: "ms",
      budget: 100,
      note: `${waits.length} completions`,
    },
    { what: "memory after the run, stand-ins included", value: memoryMb, unit: "MB", budget: null },
  ];
}

/** Seconds by the processor's clock, all threads, and by the wall's. */
async function processorOf(
  work: () => Promise<unknown>,
): Promise<{ readonly processor: number; readonly seconds: number }> {
  const before = process.cpuUsage();
  const began = performance.now();
  await work();
  const { user, system } = process.cpuUsage(before);
  return { processor: (user + system) / 1e6, seconds: (performance.now() - began) / 1000 };
}

function settingsFor(discord: StandIn, weatherBase: string, folder: string): Settings {
  return {
    dataFolder: folder,
    discordToken: discord.state.token,
    discordGuild: null,
    discordApiBase: discord.apiBase,
    contact: null,
    hosts: {
      openMeteo: weatherBase,
      airQuality: weatherBase,
      geocoding: weatherBase,
      metNorway: weatherBase,
      skySurvey: weatherBase,
    },
  };
}

/** Where it is afternoon now, so that a post is due whenever this is run. */
function afternoonSite(number: number): Site {
  const now = new Date();
  const hoursUtc = now.getUTCHours() + now.getUTCMinutes() / 60;
  const longitudeDeg = (((((16 - hoursUtc) * 15 + 180) % 360) + 360) % 360) - 180;
  return {
    name: `Site ${number}`,
    latitudeDeg: 20 + (number % 150) * 0.2,
    longitudeDeg: longitudeDeg + Math.floor(number / 150) * 0.3,
    elevationMetres: 100,
    timeZone: "Etc/UTC",
    skyline: [],
    sky: { kind: "bortle", class: 5 },
    brightDirections: [],
    seeingArcsec: null,
  };
}

async function foundClubs(discord: StandIn, world: World): Promise<readonly Channel[]> {
  const { books, timeZoneAt } = world.context();
  const channels: Channel[] = [];
  for (let club = 0; club < CLUBS; club++) {
    const guild = discord.addGuild(`Club ${club}`);
    const channel = discord.addChannel(guild, "evenings");
    channels.push(channel);
    for (let number = 0; number < SITES_A_CLUB; number++) {
      const site = afternoonSite(club * SITES_A_CLUB + number);
      const timeZone = timeZoneAt(site.latitudeDeg, site.longitudeDeg);
      await books.sites.save(
        guild.id,
        `9000000000000000${10 + number}`,
        { ...site, timeZone },
        { shared: true },
      );
    }
    await books.clubs.change(guild.id, { channelId: channel.id, hoursBeforeSunset: 10 });
    for (let member = 0; member < MEMBERS_A_CLUB; member++) {
      const siteName = `Site ${club * SITES_A_CLUB + (member % SITES_A_CLUB)}`;
      await books.notify.set(guild.id, `9000000000000000${10 + member}`, { siteName, leastHours: 1 });
    }
  }
  return channels;
}

/** Types into an option all the time and measures how long each completion takes. */
function startTyping(discord: StandIn, channel: Channel | undefined) {
  if (channel === undefined) throw new Error("there is no channel to type in");
  const person = new Person(discord, "Typist");
  const waits: number[] = [];
  let typing = true;
  const done = (async () => {
    for (let count = 0; typing; count++) {
      const value = ["ngc", "m3", "veil", "rosette", "ic 4"][count % 5] ?? "";
      const options = [{ name: "target", type: 3, value, focused: true }];
      const began = performance.now();
      const heard = person.type(channel, "target", options);
      while (heard.interaction.choices === null) {
        await sleep(1);
        if (performance.now() - began > 3000) break;
      }
      waits.push(performance.now() - began);
      await sleep(TYPE_EVERY_MS);
    }
  })();
  return {
    async stop() {
      typing = false;
      await done;
      return waits;
    },
  };
}

/** Answers made once for each shape of question, so that the stand-in's own work stays small. */
const made = new Map<string, Reply>();

/** Clear sky wherever it is asked for, in each service's own shape. */
const clearSky: Reply = (asked, response) => {
  const { latitude = "", models = "", hourly = "" } = asked.query;
  const key = `${asked.path} ${latitude.split(",").length} ${models} ${hourly}`;
  const reply = made.get(key) ?? json(clearAnswer(asked));
  made.set(key, reply);
  reply(asked, response);
};

function clearAnswer(asked: Asked): unknown {
  const first = Math.floor(Date.now() / HOUR_MS) * HOUR_MS - 24 * HOUR_MS;
  const instants = Array.from({ length: HOURS }, (_, hour) => first + hour * HOUR_MS);
  return asked.path.includes("locationforecast") ? metClear(instants) : openMeteoClear(asked, instants);
}

function openMeteoClear(asked: Asked, instants: readonly number[]): unknown {
  const places = (asked.query.latitude ?? "").split(",").length;
  const models = (asked.query.models ?? "").split(",").filter((model) => model !== "");
  const columns = (asked.query.hourly ?? "").split(",").flatMap((name) => {
    const values = instants.map(() => clearValue(name));
    return models.length === 0 ? [[name, values]] : models.map((model) => [`${name}_${model}`, values]);
  });
  const one = openMeteoAnswer(Object.fromEntries(columns));
  const hourly = { ...(one.hourly as object), time: instants.map((ms) => ms / 1000) };
  return places === 1 ? { ...one, hourly } : Array.from({ length: places }, () => ({ ...one, hourly }));
}

function clearValue(name: string): number {
  if (name.startsWith("temperature")) return 8;
  if (name.startsWith("dew")) return -2;
  if (name.startsWith("relative_humidity")) return 50;
  if (name.startsWith("visibility")) return 30_000;
  if (name.startsWith("aerosol")) return 0.1;
  return name.startsWith("wind") ? 2 : 0;
}

function metClear(instants: readonly number[]): unknown {
  return metAnswer(
    instants.map((ms) => ({
      time: new Date(ms).toISOString().replace(".000", ""),
      instant: { air_temperature: 7, cloud_area_fraction: 0, wind_speed: 2 },
      next_1_hours: { precipitation_amount: 0 },
    })),
  );
}
