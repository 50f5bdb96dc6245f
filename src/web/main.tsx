import { createRoot } from "react-dom/client";
import { App } from "./app/app.tsx";
import { showPreferences } from "./preferences/preferences.ts";
import "./design/fonts.css";
import "./design/tokens.css";
import "./design/base.css";

showPreferences();
const place = document.getElementById("app");
if (place !== null) createRoot(place).render(<App />);
