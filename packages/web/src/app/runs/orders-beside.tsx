import { Link } from "wouter";
import { useDesk } from "../book/desk.tsx";
import { outsideAddress } from "../outside/address.ts";
import { partAddress } from "../parts/address.ts";
import { moneyText } from "../parts/amounts.ts";
import { TableScroll } from "../parts/table-scroll.tsx";
import { usePick, useWords } from "../words.tsx";
import { dayText } from "./days.ts";
import type { Plan } from "./run-tab.ts";

/** Moulds, jigs and other tools that have to be there before the parts. */
export function ToolOrders({ plan }: { readonly plan: Plan }) {
  const own = useWords().runs.orders;
  const pick = usePick();
  const { bookId } = useDesk();
  if (plan.tools.length === 0) return null;
  return (
    <>
      <h3>{own.tools}</h3>
      <TableScroll>
        <table className="plain">
          <caption className="visually-hidden">{own.tools}</caption>
          <thead>
            <tr>
              <th scope="col">{own.tools}</th>
              <th scope="col">{own.forPart}</th>
              <th scope="col" className="end">
                {own.count}
              </th>
              <th scope="col">{own.orderDay}</th>
              <th scope="col">{own.dueDay}</th>
              <th scope="col" className="end">
                {own.cost}
              </th>
            </tr>
          </thead>
          <tbody>
            {plan.tools.map((tool) => {
              const part = plan.parts.get(tool.partId);
              return (
                <tr key={`${tool.toolingId} ${tool.orderDay}`}>
                  <th scope="row">
                    <Link href={`/b/${bookId}/tables/tooling?id=${encodeURIComponent(tool.toolingId)}`}>
                      {tool.toolingId}
                    </Link>
                  </th>
                  <td>
                    <Link href={partAddress(bookId, tool.partId)}>
                      {pick(part?.label ?? "", part?.labelZh ?? "") || tool.partId}
                    </Link>
                  </td>
                  <td className="end">{tool.count}</td>
                  <td>{dayText(tool.orderDay)}</td>
                  <td>{dayText(tool.dueDay)}</td>
                  <td className="end">{tool.cost === null ? "–" : moneyText(tool.cost, plan.currency)}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </TableScroll>
    </>
  );
}

/** Samples that have to be approved before their lots are ordered. */
export function FirstArticles({ plan }: { readonly plan: Plan }) {
  const own = useWords().runs.orders;
  const words = useWords().parts;
  const pick = usePick();
  const { bookId } = useDesk();
  if (plan.articles.length === 0) return null;
  return (
    <>
      <h3>{own.articles}</h3>
      <TableScroll>
        <table className="plain">
          <caption className="visually-hidden">{own.articles}</caption>
          <thead>
            <tr>
              <th scope="col">{words.part}</th>
              <th scope="col">{words.facts.revision}</th>
              <th scope="col">{own.supplier}</th>
              <th scope="col">{own.askDay}</th>
              <th scope="col">{own.dueDay}</th>
            </tr>
          </thead>
          <tbody>
            {plan.articles.map((article) => {
              const part = plan.parts.get(article.partId);
              const supplier = plan.suppliers.get(article.supplierId ?? "");
              return (
                <tr key={`${article.partId} ${article.revision}`}>
                  <th scope="row">
                    <Link href={outsideAddress(bookId, article.partId)}>
                      {pick(part?.label ?? "", part?.labelZh ?? "") || article.partId}
                    </Link>
                  </th>
                  <td>{article.revision}</td>
                  <td>{pick(supplier?.label ?? "", supplier?.labelZh ?? "") || article.supplierId}</td>
                  <td>{dayText(article.askDay)}</td>
                  <td>{dayText(article.dueDay)}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </TableScroll>
    </>
  );
}
