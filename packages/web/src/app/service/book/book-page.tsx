import { ActionIcon } from "@mantine/core";
import { pathTo, type ServiceBookGuide } from "@pinwright/contract";
import { IconZoomIn, IconZoomOut } from "@tabler/icons-react";
import { type CSSProperties, useEffect, useRef, useState } from "react";
import { useWords } from "../../words.tsx";
import type { Spot } from "./find-text.ts";

const SCALES = [1, 1.5, 2, 3] as const;

/** A place of a page in parts of its size, so that it stays there however large the page is shown. */
const placed = (
  spot: Spot,
  page: { readonly widthMm: number; readonly heightMm: number },
): CSSProperties => ({
  left: `${(100 * spot.xMm) / page.widthMm}%`,
  top: `${(100 * spot.yMm) / page.heightMm}%`,
  width: `${(100 * spot.widthMm) / page.widthMm}%`,
  height: `${(100 * spot.heightMm) / page.heightMm}%`,
});

/** One page as it was composed, with its links and what was searched for. */
export function BookPage({
  job,
  guide,
  page,
  spot,
  onOpen,
}: {
  readonly job: string;
  readonly guide: ServiceBookGuide;
  /** Counted from 1. */
  readonly page: number;
  readonly spot: Spot | null;
  readonly onOpen: (page: number) => void;
}) {
  const { serviceBookApp: own } = useWords();
  const [scale, setScale] = useState(0);
  const paper = useRef<HTMLDivElement>(null);
  const sheet = useRef<HTMLElement>(null);
  const [shown, setShown] = useState(0);
  useEffect(() => {
    let wanted = true;
    void fetch(pathTo("serviceBookPage", { job, page: String(page) }), { credentials: "same-origin" })
      .then((response) => (response.ok ? response.text() : ""))
      .then(
        (text) => {
          if (!wanted || text === "" || paper.current === null) return;
          paper.current.replaceChildren(drawn(text));
          setShown(page);
        },
        () => undefined,
      );
    return () => {
      wanted = false;
    };
  }, [job, page]);
  useEffect(() => {
    // What was searched for comes into sight.
    if (spot !== null && shown === page)
      sheet.current?.querySelector(".book-spot")?.scrollIntoView({ block: "center", inline: "center" });
  }, [spot, shown, page]);
  const size = guide.pages[page - 1];
  if (size === undefined) return null;
  const factor = SCALES[scale] ?? 1;
  return (
    <>
      <div className="book-zoom">
        <ActionIcon
          variant="default"
          size="lg"
          aria-label={own.smaller}
          title={own.smaller}
          disabled={scale === 0}
          onClick={() => setScale(scale - 1)}
        >
          <IconZoomOut size={18} />
        </ActionIcon>
        <ActionIcon
          variant="default"
          size="lg"
          aria-label={own.larger}
          title={own.larger}
          disabled={scale === SCALES.length - 1}
          onClick={() => setScale(scale + 1)}
        >
          <IconZoomIn size={18} />
        </ActionIcon>
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a page that is larger than its window is moved by keys */}
      <section className="book-window" tabIndex={0} aria-label={own.page(page)}>
        <article
          className="book-page"
          ref={sheet}
          data-page={shown}
          style={{ aspectRatio: `${size.widthMm} / ${size.heightMm}`, width: `${100 * factor}%` }}
        >
          <div ref={paper} className="book-paper" />
          {size.links.map((link, i) =>
            "url" in link.to ? (
              <a
                // biome-ignore lint/suspicious/noArrayIndexKey: a finished book never changes
                key={i}
                className="book-link"
                style={placed(link, size)}
                href={link.to.url}
                target="_blank"
                rel="noreferrer"
              >
                <span className="book-link-text">{link.text}</span>
              </a>
            ) : (
              <PageLink
                // biome-ignore lint/suspicious/noArrayIndexKey: a finished book never changes
                key={i}
                label={own.linkTo(link.text, link.to.page + 1)}
                style={placed(link, size)}
                page={link.to.page + 1}
                onOpen={onOpen}
              />
            ),
          )}
          {spot !== null && shown === page && <div className="book-spot" style={placed(spot, size)} />}
        </article>
      </section>
    </>
  );
}

function PageLink({
  label,
  style,
  page,
  onOpen,
}: {
  readonly label: string;
  readonly style: CSSProperties;
  readonly page: number;
  readonly onOpen: (page: number) => void;
}) {
  return (
    <button
      type="button"
      className="book-link"
      style={style}
      aria-label={label}
      title={label}
      onClick={() => onOpen(page)}
    />
  );
}

/** The SVG of a page as an element that fills its place. */
function drawn(text: string): Node {
  const { documentElement } = new DOMParser().parseFromString(text, "image/svg+xml");
  documentElement.setAttribute("width", "100%");
  documentElement.setAttribute("height", "100%");
  return document.importNode(documentElement, true);
}
