// Loaded before a measured program: tells what it used, as JSON, on the pipe that the bench opened.
const { writeSync } = require('node:fs');

process.on('exit', () => writeSync(3, JSON.stringify(process.resourceUsage())));
