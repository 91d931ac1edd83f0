// @ts-check
/** Brings to life what stands around the page. */
import { startDialogs } from "./dialogs.js";
import { startOffline } from "./offline.js";
import { startSearch } from "./search.js";
import { SystemSwitch } from "./system-switch.js";
import { startTheme } from "./theme.js";

startDialogs();
startSearch();
startTheme();
startOffline();
SystemSwitch.define();
