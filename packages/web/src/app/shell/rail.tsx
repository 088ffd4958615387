import { IconBooks, IconDeviceTablet } from "@tabler/icons-react";
import { Link, useLocation } from "wouter";
import { useOne } from "../book/desk.tsx";
import { BOOK_SECTIONS } from "../sections.ts";
import { useWords } from "../words.tsx";

/** The sections, grouped by what a person is doing. */
export function Rail({ bookId }: { readonly bookId: string | null }) {
  const words = useWords();
  const [location] = useLocation();
  return (
    <nav className="rail" aria-label={words.shell.menu}>
      <Link href="/" aria-current={location === "/" ? "page" : undefined}>
        <IconBooks size={18} /> {words.shell.books}
      </Link>
      {/* Another page, with a bundle of its own that works without the network. */}
      <a href="/floor">
        <IconDeviceTablet size={18} /> {words.floorBench.net.floor}
      </a>
      {bookId !== null && <Sections bookId={bookId} location={location} />}
    </nav>
  );
}

function Sections({ bookId, location }: { readonly bookId: string; readonly location: string }) {
  const words = useWords();
  const summary = useOne("summary", null);
  const groups = ["design", "make", "keep"] as const;
  return groups.map((group) => (
    <div key={group} style={{ display: "contents" }}>
      <h2>{words.shell.groups[group]}</h2>
      {BOOK_SECTIONS.filter((section) => section.group === group).map(({ path, Icon }) => {
        const href = `/b/${bookId}/${path}`;
        const here = location === href || location.startsWith(`${href}/`);
        return (
          <Link key={path} href={href} aria-current={here ? "page" : undefined}>
            <Icon size={18} /> {words.shell.sections[path]}
            {path === "findings" && summary !== undefined && summary.errors + summary.warnings > 0 && (
              <span className={`count ${summary.errors > 0 ? "error-text" : "amber-text"}`}>
                {summary.errors + summary.warnings}
              </span>
            )}
          </Link>
        );
      })}
    </div>
  ));
}
