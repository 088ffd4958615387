/** Longest side of a kept picture: a joint can be judged on it, and a day of them fits on a tablet. */
const LONGEST_PX = 1600;
const QUALITY = 0.82;

/** Size of a picture whose longer side is at most so long; small ones stay as they are. */
export function fitted(widthPx: number, heightPx: number, longestPx = LONGEST_PX) {
  const scale = Math.min(1, longestPx / Math.max(widthPx, heightPx));
  return {
    widthPx: Math.max(1, Math.round(widthPx * scale)),
    heightPx: Math.max(1, Math.round(heightPx * scale)),
  };
}

/** A photo as a small JPEG, the way up in which it was taken; throws when it is no picture. */
export async function shrunk(photo: Blob): Promise<Blob> {
  const picture = await createImageBitmap(photo, { imageOrientation: "from-image" });
  const { widthPx, heightPx } = fitted(picture.width, picture.height);
  const canvas = document.createElement("canvas");
  canvas.width = widthPx;
  canvas.height = heightPx;
  const context = canvas.getContext("2d");
  if (context === null) throw new Error("The browser draws no pictures.");
  // What can be seen through becomes white, not black.
  context.fillStyle = "white";
  context.fillRect(0, 0, widthPx, heightPx);
  context.drawImage(picture, 0, 0, widthPx, heightPx);
  picture.close();
  return new Promise((done, failed) =>
    canvas.toBlob(
      (blob) => (blob === null ? failed(new Error("The picture cannot be kept.")) : done(blob)),
      "image/jpeg",
      QUALITY,
    ),
  );
}
