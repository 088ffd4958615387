import "@fontsource/ibm-plex-sans/latin-400.css";
import "@fontsource/ibm-plex-sans/latin-600.css";
import "@mantine/core/styles.css";
import "./app.css";
import { createRoot } from "react-dom/client";
import { App } from "./app.tsx";

const root = document.getElementById("app");
if (root === null) throw new Error("The page has no place for the app.");
createRoot(root).render(<App />);
// Slices of the Chinese font load only where their signs are shown.
void import("@fontsource/noto-sans-sc/400.css");
