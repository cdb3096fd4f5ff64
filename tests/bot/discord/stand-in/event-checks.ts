/**
 * What a scheduled event may hold; only events at a place outside Discord are known here.
 *
 * Discord's developer documentation: Guild Scheduled Event.
 *
 * @packageDocumentation
 */
import { invalidForm } from "./api-error.ts";

type Json = Record<string, unknown>;

const EXTERNAL = 3;

/** @throws ApiError with every complaint */
export function checkEvent(event: Json, nowMs: number): void {
  const found: string[] = [];
  const within = (value: unknown, max: number) =>
    typeof value === "string" && value.length >= 1 && value.length <= max;
  if (!within(event.name, 100)) found.push("name: 1–100");
  if (event.description !== undefined && event.description !== null && !within(event.description, 1000)) {
    found.push("description: 1–1000");
  }
  if (event.privacy_level !== 2) found.push("privacy_level: must be 2");
  if (event.entity_type !== EXTERNAL) found.push("entity_type: must be 3 here");
  if (event.channel_id !== null && event.channel_id !== undefined) found.push("channel_id: must be null");
  if (!within((event.entity_metadata as Json | undefined)?.location, 100)) {
    found.push("entity_metadata.location: 1–100");
  }
  const start = Date.parse(String(event.scheduled_start_time));
  const end = Date.parse(String(event.scheduled_end_time));
  if (Number.isNaN(start)) found.push("scheduled_start_time: required");
  if (Number.isNaN(end)) found.push("scheduled_end_time: required");
  if (start <= nowMs) found.push("scheduled_start_time: cannot be in the past");
  if (end <= start) found.push("scheduled_end_time: must be after the start");
  if (found.length > 0) throw invalidForm(found);
}

/** Status may go 1→2→3 or 1→4. @throws ApiError otherwise */
export function checkStatusChange(from: number, to: number): void {
  const allowed = from === to || (from === 1 && (to === 2 || to === 4)) || (from === 2 && to === 3);
  if (!allowed) throw invalidForm([`status: ${from} may not become ${to}`]);
}
