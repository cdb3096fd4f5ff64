/**
 * Charts drawn and files written beside an answer.
 *
 * The drawing library is loaded when the first chart is drawn, not before.
 *
 * @packageDocumentation
 */
import { writeFile } from "node:fs/promises";
import { join, resolve } from "node:path";
import type { Answer } from "../../commands/answer.ts";
import { WorldError } from "../../commands/ask-error.ts";
import { makeFolder } from "../folders.ts";

export type SavedChart = {
  readonly name: string;
  /** `null` when it was not drawn. */
  readonly path: string | null;
  readonly alt: string;
};

export type SavedFile = { readonly name: string; readonly path: string; readonly mediaType: string };

/** A folder to write into; it remembers its names, so that nothing written before is lost. */
export class OutputFolder {
  readonly #folder: string;
  readonly #taken: Set<string>;

  /** @param taken - names written already by this process, shared by the folders of one run */
  constructor(folder: string, taken: Set<string>) {
    this.#folder = resolve(folder);
    this.#taken = taken;
  }

  /**
   * Writes bytes under a name, or under `name-2`, `name-3` … when this process has used it.
   *
   * @throws WorldError when the folder cannot be written to
   */
  async write(name: string, ending: string, bytes: Uint8Array): Promise<string> {
    const stem = name.replace(/[^\w.-]+/g, "-").replace(/^\.+/, "") || "file";
    let path = join(this.#folder, stem + ending);
    for (let count = 2; this.#taken.has(path); count++)
      path = join(this.#folder, `${stem}-${count}${ending}`);
    this.#taken.add(path);
    try {
      makeFolder(this.#folder);
      await writeFile(path, bytes);
    } catch (fault) {
      throw new WorldError(
        `“${this.#folder}” cannot be written to: name another folder with --charts.`,
        fault,
      );
    }
    return path;
  }
}

/** Draws an answer's charts into a folder; without one they are only named. */
export async function saveCharts(
  charts: Answer["charts"],
  folder: OutputFolder | null,
): Promise<readonly SavedChart[]> {
  if (folder === null || charts.length === 0) {
    return charts.map(({ name, alt }) => ({ name, path: null, alt }));
  }
  const { drawChart } = await import("../charts/draw.ts");
  const saved: SavedChart[] = [];
  for (const chart of charts) {
    const path = await folder.write(chart.name, ".png", await drawChart(chart));
    saved.push({ name: chart.name, path, alt: chart.alt });
  }
  return saved;
}

/** Writes an answer's files into a folder. */
export async function saveAttachments(
  attachments: Answer["attachments"],
  folder: OutputFolder | null,
): Promise<readonly SavedFile[]> {
  if (folder === null) return [];
  const saved: SavedFile[] = [];
  for (const { name, mediaType, bytes } of attachments ?? []) {
    const dot = name.lastIndexOf(".");
    const [stem, ending] = dot > 0 ? [name.slice(0, dot), name.slice(dot)] : [name, ""];
    saved.push({ name, mediaType, path: await folder.write(stem, ending, bytes) });
  }
  return saved;
}
