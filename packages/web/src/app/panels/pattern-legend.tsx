import { useWords } from "../words.tsx";

const ARROW = "M-16 0H16M-16 0l5 -4M-16 0l5 4M16 0l-5 -4M16 0l-5 4";

/** What the fillings and lines of a pattern mean. */
export function PatternLegend({ grain }: { readonly grain: boolean }) {
  const { legend } = useWords().panels;
  return (
    <ul className="chart-legend">
      {(["panel later", "panel now", "panel done", "offcut"] as const).map((kind) => (
        <li key={kind}>
          <svg width="22" height="14" aria-hidden="true" className="pattern">
            <g className={`area ${kind}`}>
              <rect x="1" y="1" width="20" height="12" />
            </g>
          </svg>
          {legend[kind]}
        </li>
      ))}
      <li>
        <svg width="22" height="14" aria-hidden="true" className="pattern">
          <rect className="sheet" x="1" y="1" width="20" height="12" />
        </svg>
        {legend.waste}
      </li>
      <li>
        <svg width="22" height="14" aria-hidden="true" className="pattern">
          <g className="this-cut">
            <path d="M1 7H21" />
          </g>
        </svg>
        {legend.cut}
      </li>
      {grain && (
        <li>
          <svg width="44" height="14" aria-hidden="true" className="pattern">
            <g className="grain-arrow" transform="translate(22 7)">
              <path d={ARROW} />
            </g>
          </svg>
          {legend.grain}
        </li>
      )}
    </ul>
  );
}
