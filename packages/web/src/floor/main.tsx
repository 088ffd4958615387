import "@fontsource/ibm-plex-sans/latin-400.css";
import "@fontsource/ibm-plex-sans/latin-600.css";
import "@mantine/core/styles.css";
import "../app/app.css";
import "../app/layout/layout.css";
import "../app/screws/screws.css";
import "../app/screws/bench/bench.css";
import "../app/boards/boards.css";
import "../app/wiring/housing.css";
import "./floor.css";
import "./floor-bench.css";
import { createRoot } from "react-dom/client";
import { FloorApp } from "./floor-app.tsx";

const root = document.getElementById("app");
if (root === null) throw new Error("The page has no place for the app.");
createRoot(root).render(<FloorApp />);
// Slices of the Chinese font load only where their signs are shown.
void import("@fontsource/noto-sans-sc/400.css");
