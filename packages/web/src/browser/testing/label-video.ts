import { execFile } from "node:child_process";
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";

const WIDTH = 640;
const HEIGHT = 480;
const FRAMES = 5;
/** Of a label of 50 mm this makes some 400 px: it fills two thirds of the picture, as it does before a tablet. */
const DPI = 200;

/** A grey picture. */
interface Grey {
  readonly width: number;
  readonly height: number;
  readonly pixels: Uint8Array;
}

/** Reads a picture as `pdftoppm -gray` writes it: P5, sizes, 255, one byte a pixel. */
function greyOf(file: Buffer): Grey {
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/u.exec(file.subarray(0, 40).toString("latin1"));
  if (head === null) throw new Error("This is no grey picture.");
  return { width: Number(head[1]), height: Number(head[2]), pixels: file.subarray(head[0].length) };
}

/** A camera that looks at a picture: a few frames in YUV4MPEG2, the picture in the middle of a grey table. */
function video({ width, height, pixels }: Grey): Buffer {
  const luma = Buffer.alloc(WIDTH * HEIGHT, 150);
  const [left, top] = [Math.floor((WIDTH - width) / 2), Math.floor((HEIGHT - height) / 2)];
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) luma[(top + y) * WIDTH + left + x] = pixels[y * width + x] ?? 0;
  const chroma = Buffer.alloc((WIDTH * HEIGHT) / 2, 128);
  const frame = Buffer.concat([Buffer.from("FRAME\n"), luma, chroma]);
  const head = Buffer.from(`YUV4MPEG2 W${WIDTH} H${HEIGHT} F10:1 Ip A1:1 C420jpeg\n`);
  return Buffer.concat([head, ...Array.from({ length: FRAMES }, () => frame)]);
}

/** A file that a browser plays as its camera: the label of a unit, as the server prints it. */
export async function labelVideo(
  address: string,
  book: string,
  unit: string,
): Promise<{ readonly path: string; readonly remove: () => Promise<void> }> {
  const query = new URLSearchParams({
    book,
    language: "en",
    paper: "roll",
    widthMm: "50",
    heightMm: "30",
    units: unit,
  });
  const response = await fetch(new URL(`/api/record-sheets/labels?${query}`, address));
  if (!response.ok) throw new Error(await response.text());
  const folder = await mkdtemp(join(tmpdir(), "pinwright-camera-"));
  const [pdf, page] = [join(folder, "label.pdf"), join(folder, "label")];
  await writeFile(pdf, Buffer.from(await response.arrayBuffer()));
  await promisify(execFile)("pdftoppm", ["-gray", "-r", String(DPI), "-singlefile", pdf, page]);
  const path = join(folder, "camera.y4m");
  await writeFile(path, video(greyOf(await readFile(`${page}.pgm`))));
  return { path, remove: () => rm(folder, { recursive: true, force: true }) };
}
