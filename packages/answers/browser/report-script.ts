/** What runs in a report. */
import { equipCharts } from "./readout.js";

equipCharts(document);
