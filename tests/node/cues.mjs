// Prints the cues of a WebVTT file as the reference parser reads them: [{start, end, text}], times in seconds.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

const require = createRequire(import.meta.url);
const { WebVTTParser } = require("webvtt-parser");
const entities = require("webvtt-parser/html-entities.json");

const said = (node) => {
  if (node.type === "text") return node.value;
  if (node.name === "rt") return "";
  return (node.children ?? []).map(said).join("");
};

const { cues } = new WebVTTParser(entities).parse(readFileSync(process.argv[2], "utf8"), "captions");
const shown = cues.map(({ startTime, endTime, tree }) => ({ start: startTime, end: endTime, text: said(tree) }));
process.stdout.write(JSON.stringify(shown));
