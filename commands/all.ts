/**
 * Every command, by hand, in the order `help` lists them; a test finds one left off.
 *
 * @packageDocumentation
 */
import { about } from "./about.ts";
import { align } from "./align.ts";
import { calibration } from "./calibration.ts";
import { club } from "./club.ts";
import type { Command } from "./command.ts";
import { events } from "./events.ts";
import { exposure } from "./exposure.ts";
import { forecast } from "./forecast.ts";
import { framing } from "./framing.ts";
import { log } from "./log.ts";
import { moon } from "./moon.ts";
import { mydata } from "./mydata.ts";
import { night } from "./night.ts";
import { notify } from "./notify.ts";
import { outreach } from "./outreach.ts";
import { planets } from "./planets.ts";
import { rig } from "./rig.ts";
import { season } from "./season.ts";
import { site } from "./site.ts";
import { sun } from "./sun.ts";
import { target } from "./target.ts";
import { tonight } from "./tonight.ts";

export const COMMANDS: readonly Command[] = [
  tonight,
  forecast,
  night,
  target,
  season,
  align,
  log,
  calibration,
  framing,
  exposure,
  sun,
  moon,
  planets,
  events,
  outreach,
  site,
  rig,
  club,
  notify,
  mydata,
  about,
];
