import { useEffect, useRef, useSyncExternalStore } from "react";
import { useWords } from "../words.tsx";
import type { CameraRig } from "./camera-rig.ts";
import { barMm } from "./geometry/camera.ts";
import type { Gestures } from "./gestures.ts";

const BAR_PX = 140;

/** Scale bar, and where the pointer is in panel millimetres. */
export function StatusLine({
  rig,
  gestures,
  message,
}: {
  readonly rig: CameraRig;
  readonly gestures: Gestures;
  readonly message: string;
}) {
  const words = useWords();
  const { scale } = useSyncExternalStore(rig.camera.subscribe, rig.camera.get);
  const where = useRef<HTMLSpanElement>(null);
  useEffect(
    () =>
      gestures.pointer.subscribe(() => {
        const at = gestures.pointer.get();
        if (where.current !== null)
          where.current.textContent = at === null ? "" : words.layout.at(at.xMm, at.yMm);
      }),
    [gestures, words],
  );
  const length = barMm(scale, BAR_PX);
  return (
    <div className="layout-status">
      <span className="scale-bar" style={{ width: length * scale }}>
        {words.layout.scale(length)}
      </span>
      <span ref={where} className="where" />
      <span role="status">{message}</span>
    </div>
  );
}
