/** The arrows between the rooms, each with its reason; `npm run check` holds them. */
const only = (...packages) => packages.map((name) => `node_modules/${name}/`);

export default {
  forbidden: [
    {
      name: "no-cycles",
      severity: "error",
      comment: "A cycle has no reading order; type-only ones count too.",
      from: {},
      to: { circular: true },
    },
    {
      name: "core-stands-alone",
      severity: "error",
      comment: "core/ computes from its arguments: no Node modules, no services, no settings.",
      from: { path: "^core/" },
      to: { pathNot: ["^core/", ...only("astronomy-engine", "luxon", "@types/luxon")] },
    },
    {
      name: "commands-see-no-door",
      severity: "error",
      comment: "commands/ receives the world in its Context; it knows neither Discord nor disks.",
      from: { path: "^commands/" },
      to: {
        pathNot: ["^commands/", "^core/", "^config/", ...only("discord-api-types", "luxon", "@types/luxon")],
      },
    },
    {
      name: "config-is-data",
      severity: "error",
      comment: "config/ is read by others; what builds its tables lives in config/build/.",
      from: { path: "^config/", pathNot: "^config/build/" },
      to: { pathNot: ["^config/", "^core/"] },
    },
    {
      name: "discord-js-behind-its-door",
      severity: "error",
      comment: "The console door answers without a token and without loading discord.js.",
      from: { pathNot: ["^bot/discord/", "^tests/", "^node_modules/"] },
      to: { path: only("discord\\.js", "@discordjs") },
    },
    {
      name: "sqlite-in-the-store",
      severity: "error",
      comment: "SQL and row names stay in bot/store/, so that another database can take its place.",
      from: { pathNot: ["^bot/store/", "^tests/", "^node_modules/"] },
      to: { path: only("kysely", "better-sqlite3") },
    },
    {
      name: "nothing-imports-tests",
      severity: "error",
      comment: "Tests look at the code, never the other way round.",
      from: { pathNot: "^tests/" },
      to: { path: "^tests/" },
    },
  ],
  options: {
    doNotFollow: { path: "node_modules" },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: ".tsconfig.check.json" },
    enhancedResolveOptions: { exportsFields: ["exports"], conditionNames: ["import", "node", "default"] },
  },
};
