// Prints what the reference parser finds wrong with a WebVTT file of a kind: [{line, message}].
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

const require = createRequire(import.meta.url);
const { WebVTTParser } = require("webvtt-parser");
const entities = require("webvtt-parser/html-entities.json");

const [, , file, kind] = process.argv;
const { errors } = new WebVTTParser(entities).parse(readFileSync(file, "utf8"), kind);
process.stdout.write(JSON.stringify(errors.map(({ line, message }) => ({ line, message }))));
