/**
 * Every command, by hand, in the order `help` lists them; a test finds one left off.
 *
 * @packageDocumentation
 */
import { about } from "./about.ts";
import type { Command } from "./command.ts";
import { mydata } from "./mydata.ts";
import { night } from "./night.ts";
import { rig } from "./rig.ts";
import { site } from "./site.ts";

export const COMMANDS: readonly Command[] = [night, site, rig, mydata, about];
