import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { describe, expect, it, onTestFinished } from "vitest";
import { fetchSentFile } from "../../../bot/discord/sent-files.ts";
import { FILE_BYTES_AT_MOST, FITS_HEAD_BYTES } from "../../../config/file-limits.ts";

/** A host that answers every address with these bytes, or sends elsewhere. */
async function hostOf(bytes: Buffer, redirect?: string): Promise<string> {
  const server = createServer((_, response) => {
    if (redirect !== undefined) response.writeHead(302, { Location: redirect });
    response.end(bytes);
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  onTestFinished(() => {
    server.closeAllConnections();
    server.close();
  });
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
}

const notice = (url: string, size = 10) => ({ name: "log.csv", size, url, contentType: "text/csv" });

describe("fetchSentFile", () => {
  it("brings the file with its name and type", async () => {
    const host = await hostOf(Buffer.from("night,object\n"));
    const file = await fetchSentFile("file", notice(`${host}/log.csv`), [host]);
    expect(file).toMatchObject({ name: "log.csv", mediaType: "text/csv" });
    expect(Buffer.from(file.bytes).toString()).toBe("night,object\n");
  });

  it.each([
    "http://127.0.0.1:9/x",
    "file:///etc/passwd",
    "https://cdn.discordapp.com.evil.example/x",
    "no address",
  ])("asks no other host: %s", async (url) => {
    await expect(fetchSentFile("file", notice(url))).rejects.toThrow(/“file” must be sent as a file/);
  });

  it("does not follow a redirect", async () => {
    const secret = await hostOf(Buffer.from("secret"));
    const host = await hostOf(Buffer.alloc(0), `${secret}/x`);
    await expect(fetchSentFile("file", notice(`${host}/x`), [host])).rejects.toThrow();
  });

  it("stops at the limit, whatever size was announced", async () => {
    const host = await hostOf(Buffer.alloc(FILE_BYTES_AT_MOST + 1));
    await expect(fetchSentFile("file", notice(`${host}/x`), [host])).rejects.toThrow(/too large/);
  });

  it("reads the head alone of a FITS file", async () => {
    const fits = Buffer.alloc(FITS_HEAD_BYTES * 4, " ");
    fits.write("SIMPLE  =                    T");
    const host = await hostOf(fits);
    const file = await fetchSentFile("file", notice(`${host}/x.fits`, fits.length), [host]);
    expect(file.bytes).toHaveLength(FITS_HEAD_BYTES);
  });
});
