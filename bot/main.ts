/**
 * The bot: in Discord with a token, at the terminal without one.
 *
 * @packageDocumentation
 */
import { WorldError } from "../commands/ask-error.ts";
import { readSettings, SettingsError } from "../config/settings.ts";

async function main(): Promise<void> {
  const settings = readSettings(process.env);
  if (settings.discordToken === null) {
    const { startConsole } = await import("./console/start.ts");
    await startConsole(settings);
    // Connections kept alive must not hold the process.
    process.stdout.write("", () => process.exit(0));
    return;
  }
  const [{ openWorld }, { startDiscord }] = await Promise.all([
    import("./world.ts"),
    import("./discord/start.ts"),
  ]);
  const warn = (sentence: string) => process.stderr.write(`${sentence}\n`);
  const world = await openWorld(settings, { warn });
  const bot = await startDiscord(settings, world);
  const leave = async () => {
    await bot.stop();
    await world.close();
    process.exit(0);
  };
  process.once("SIGINT", leave);
  process.once("SIGTERM", leave);
}

try {
  await main();
} catch (fault) {
  // What the host can mend is one sentence; anything else is a fault of ours, told whole.
  const mendable = fault instanceof WorldError || fault instanceof SettingsError;
  process.stderr.write(
    `${mendable ? fault.message : fault instanceof Error ? fault.stack : String(fault)}\n`,
  );
  process.exitCode = 3;
}
