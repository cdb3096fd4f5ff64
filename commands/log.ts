/**
 * `log`: subs by target, filter and night; hours in hand; targets pooled with others.
 *
 * @packageDocumentation
 */
import type { Command } from "./command.ts";
import { addToLog, LOG_ADD } from "./log-add.ts";
import { importIntoLog, LOG_IMPORT } from "./log-import.ts";
import {
  exportLog,
  LOG_EXPORT,
  LOG_LIST,
  LOG_UNDO,
  LOG_WANT,
  listLog,
  undoLog,
  wantHours,
} from "./log-own.ts";
import { LOG_POOL, showPools } from "./log-pool.ts";
import { LOG_PROGRESS, showProgress } from "./log-progress.ts";

export const log: Command = {
  definition: {
    name: "log",
    description: "Your subs: add, import, hours in hand, hours wanted, pooled targets",
    options: [LOG_PROGRESS, LOG_ADD, LOG_IMPORT, LOG_LIST, LOG_WANT, LOG_POOL, LOG_EXPORT, LOG_UNDO],
    defaultSubcommand: "progress",
  },
  audience: "member",

  async answer(request, context) {
    switch (request.subcommand) {
      case "add":
        return addToLog(request, context);
      case "import":
        return importIntoLog(request, context);
      case "list":
        return listLog(request, context);
      case "want":
        return wantHours(request, context);
      case "pool":
        return showPools(request, context);
      case "export":
        return exportLog(request, context);
      case "undo":
        return undoLog(request, context);
      default:
        return showProgress(request, context);
    }
  },
};
