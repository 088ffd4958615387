import { useEffect, useRef } from "react";

/** A page of a sheet, as large as it fits. Our own composer wrote it; nothing in it can run. */
export function PagePicture({
  svg,
  says,
}: {
  readonly svg: string;
  /** The picture in words. */
  readonly says: string;
}) {
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const { documentElement } = new DOMParser().parseFromString(svg, "image/svg+xml");
    documentElement.removeAttribute("width");
    documentElement.removeAttribute("height");
    documentElement.setAttribute("aria-hidden", "true");
    place.current?.replaceChildren(document.importNode(documentElement, true));
  }, [svg]);
  return <div className="floor-picture" ref={place} role="img" aria-label={says} />;
}
