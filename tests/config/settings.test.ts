import { describe, expect, it } from "vitest";
import { readSettings, SettingsError } from "../../config/settings.ts";

/** Not a real token: the right shape, no more. */
const TOKEN = "an-invented.token-for.tests-alone";

describe("readSettings", () => {
  it("runs at the terminal, with the services' own addresses, when nothing is set", () => {
    expect(readSettings({ DISCORD_TOKEN: "", DUSKBELL_DATA: " " })).toMatchObject({
      dataFolder: "data",
      discordToken: null,
      discordGuild: null,
      contact: null,
      hosts: { metNorway: "https://api.met.no" },
    });
  });

  it("reads what is set, addresses without the slash at their end", () => {
    expect(
      readSettings({
        DUSKBELL_DATA: "/srv/duskbell",
        DISCORD_TOKEN: TOKEN,
        DISCORD_GUILD: "123456789012345678",
        DISCORD_API_BASE: "http://127.0.0.1:8080/api/",
        DUSKBELL_CONTACT: "duskbell@fell-end.example",
      }),
    ).toMatchObject({
      dataFolder: "/srv/duskbell",
      discordToken: TOKEN,
      discordApiBase: "http://127.0.0.1:8080/api",
      contact: "duskbell@fell-end.example",
    });
  });

  it.each([
    ["DISCORD_TOKEN", "two words", /DISCORD_TOKEN must be a bot's token/],
    ["DISCORD_GUILD", "fell-end", /DISCORD_GUILD must be a server's id/],
    ["DISCORD_API_BASE", "ftp://example.org", /DISCORD_API_BASE must be an https address/],
    ["DUSKBELL_MET_NORWAY", "http://example.org", /http on this machine alone/],
    ["DUSKBELL_OPEN_METEO", "https://example.org/?key=1", /without a query/],
    ["DUSKBELL_CONTACT", "nobody", /web or mail address/],
    ["DUSKBELL_CONTACT", "a@b.example\r\nX-Evil: 1", /web or mail address/],
  ])("names %s when it is %j, and does not repeat the value", (name, value, message) => {
    const read = () => readSettings({ [name]: value });
    expect(read).toThrow(SettingsError);
    expect(read).toThrow(message);
    try {
      read();
    } catch (fault) {
      expect(String(fault)).not.toContain(value);
    }
  });

  it("names everything that is wrong, a sentence each", () => {
    expect(() => readSettings({ DISCORD_TOKEN: "x", DISCORD_GUILD: "y" })).toThrow(
      /DISCORD_TOKEN must be .*\. DISCORD_GUILD must be .*\./,
    );
  });
});
