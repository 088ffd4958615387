import { useLocation } from "wouter";
import { useDesk } from "../../book/desk.tsx";
import { UnitPage } from "../unit/unit-page.tsx";
import { UnitsPage } from "./units-page.tsx";

/** All units, or the one that the address names. */
export default function UnitsTab() {
  const { bookId } = useDesk();
  const [location] = useLocation();
  const [, , asked = ""] = location.slice(`/b/${bookId}/bench`.length).split("/");
  const unit = decodeURIComponent(asked);
  return unit === "" ? <UnitsPage /> : <UnitPage key={unit} unit={unit} />;
}
