/**
 * What the host of the bot sets, in environment variables: read once, checked, named when wrong.
 *
 * A value is never repeated in a message: one of them is a secret.
 *
 * @packageDocumentation
 */

export type Settings = {
  /** Folder of the store, made when it is not there. */
  readonly dataFolder: string;
  /** `null` without Discord: the bot answers at the terminal. */
  readonly discordToken: string | null;
  /** Commands are registered to this one server; `null` for all. */
  readonly discordGuild: string | null;
  /** Another server that speaks Discord's API; `null` for Discord's own. */
  readonly discordApiBase: string | null;
  /** Who runs this bot: a web or mail address that goes into the User-Agent; `null` when not set. */
  readonly contact: string | null;
  /** Where each service is asked, without a slash at the end. */
  readonly hosts: ServiceHosts;
};

export type ServiceHosts = {
  readonly openMeteo: string;
  readonly airQuality: string;
  readonly geocoding: string;
  readonly metNorway: string;
  /** Pictures of the sky to frame on. */
  readonly skySurvey: string;
};

/** Sentences, one for each setting that is wrong. */
export class SettingsError extends Error {
  constructor(sentences: readonly string[]) {
    super(sentences.join(" "));
    this.name = "SettingsError";
  }
}

const DEFAULT_HOSTS: ServiceHosts = {
  openMeteo: "https://api.open-meteo.com",
  airQuality: "https://air-quality-api.open-meteo.com",
  geocoding: "https://geocoding-api.open-meteo.com",
  metNorway: "https://api.met.no",
  skySurvey: "https://alasky.cds.unistra.fr",
};

/** Plain http never leaves the machine: it is for stand-ins and tests. */
const LOOPBACK = new Set(["localhost", "127.0.0.1", "[::1]"]);

const CONTACT_LENGTH = 120;

/**
 * The settings from an environment; an empty variable counts as not set.
 *
 * @throws SettingsError with one sentence for each variable that is wrong
 */
export function readSettings(environment: Readonly<Record<string, string | undefined>>): Settings {
  const wrong: string[] = [];
  const read = (name: string): string | null => environment[name]?.trim() || null;

  const shaped = (name: string, fits: (text: string) => boolean, should: string): string | null => {
    const text = read(name);
    if (text === null || fits(text)) return text;
    wrong.push(`${name} must be ${should}.`);
    return null;
  };
  const address = (name: string): string | null =>
    shaped(name, isServiceAddress, "an https address (http on this machine alone), without a query")?.replace(
      /\/+$/,
      "",
    ) ?? null;

  const settings: Settings = {
    dataFolder: shaped("DUSKBELL_DATA", (text) => !text.includes("\0"), "the path of a folder") ?? "data",
    discordToken: shaped("DISCORD_TOKEN", (text) => /^[\w.-]{20,200}$/.test(text), "a bot's token, alone"),
    discordGuild: shaped("DISCORD_GUILD", (text) => /^\d{15,21}$/.test(text), "a server's id, digits alone"),
    discordApiBase: address("DISCORD_API_BASE"),
    contact: shaped(
      "DUSKBELL_CONTACT",
      (text) => text.length <= CONTACT_LENGTH && /^[\x20-\x7e]+$/.test(text) && /[@.]/.test(text),
      `a web or mail address of at most ${CONTACT_LENGTH} plain characters`,
    ),
    hosts: {
      openMeteo: address("DUSKBELL_OPEN_METEO") ?? DEFAULT_HOSTS.openMeteo,
      airQuality: address("DUSKBELL_AIR_QUALITY") ?? DEFAULT_HOSTS.airQuality,
      geocoding: address("DUSKBELL_GEOCODING") ?? DEFAULT_HOSTS.geocoding,
      metNorway: address("DUSKBELL_MET_NORWAY") ?? DEFAULT_HOSTS.metNorway,
      skySurvey: address("DUSKBELL_SKY_SURVEY") ?? DEFAULT_HOSTS.skySurvey,
    },
  };
  if (wrong.length > 0) throw new SettingsError(wrong);
  return settings;
}

function isServiceAddress(text: string): boolean {
  if (!URL.canParse(text)) return false;
  const { protocol, hostname, search, hash, username, password } = new URL(text);
  const safe = protocol === "https:" || (protocol === "http:" && LOOPBACK.has(hostname));
  return safe && [search, hash, username, password].every((part) => part === "");
}
