import { ActionIcon } from "@mantine/core";
import { pathTo, type ServiceBookGuide } from "@pinwright/contract";
import { IconZoomIn, IconZoomOut } from "@tabler/icons-react";
import { type CSSProperties, useEffect, useRef, useState } from "react";
import { useWords } from "../../words.tsx";
import type { Spot } from "./find-text.ts";

const SCALES = [1, 1.5, 2, 3] as const;

type Link = ServiceBookGuide["pages"][number]["links"][number];
const NO_LINKS: readonly Link[] = [];

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
  const links = size?.links ?? NO_LINKS;
  useEffect(() => {
    // The text of a page is its link, as small as it is; the list below is for fingers and keys.
    const pressed = ({ target }: MouseEvent): void => {
      const at = target instanceof HTMLElement ? target.dataset.link : undefined;
      const to = at === undefined ? undefined : links[Number(at)]?.to;
      if (to === undefined) return;
      if ("url" in to) window.open(to.url, "_blank", "noreferrer");
      else onOpen(to.page + 1);
    };
    const element = sheet.current;
    element?.addEventListener("click", pressed);
    return () => element?.removeEventListener("click", pressed);
  }, [links, onOpen]);
  if (size === undefined) return null;
  const nameOf = ({ text, to }: Link): string => ("url" in to ? text : own.linkTo(text, to.page + 1));
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
          {size.links.map((link, i) => (
            <span
              // biome-ignore lint/suspicious/noArrayIndexKey: a finished book never changes
              key={i}
              className="book-link"
              aria-hidden
              data-link={i}
              title={nameOf(link)}
              style={placed(link, size)}
            />
          ))}
          {spot !== null && shown === page && <div className="book-spot" style={placed(spot, size)} />}
        </article>
      </section>
      <PageLinks links={size.links} nameOf={nameOf} onOpen={onOpen} />
    </>
  );
}

/** The links of a page once more, each large enough for a finger and reached by keys. */
function PageLinks({
  links,
  nameOf,
  onOpen,
}: {
  readonly links: readonly Link[];
  readonly nameOf: (link: Link) => string;
  readonly onOpen: (page: number) => void;
}) {
  const { serviceBookApp: own } = useWords();
  if (links.length === 0) return null;
  return (
    <details className="book-links">
      <summary>{own.linksHere(links.length)}</summary>
      <ul className="book-hits">
        {links.map((link, i) => {
          const { to } = link;
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: a finished book never changes
            <li key={i}>
              {"url" in to ? (
                <a className="book-line" href={to.url} target="_blank" rel="noreferrer">
                  {nameOf(link)}
                </a>
              ) : (
                <button type="button" className="book-line" onClick={() => onOpen(to.page + 1)}>
                  {nameOf(link)}
                </button>
              )}
            </li>
          );
        })}
      </ul>
    </details>
  );
}

/** The SVG of a page as an element that fills its place. */
function drawn(text: string): Node {
  const { documentElement } = new DOMParser().parseFromString(text, "image/svg+xml");
  documentElement.setAttribute("width", "100%");
  documentElement.setAttribute("height", "100%");
  return document.importNode(documentElement, true);
}
