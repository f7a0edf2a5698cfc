// Package planfile reads a plan from its YAML text and writes it back.
//
// Reading is strict and kind: every mistake of a file is told at once, in file
// order, each with its line, what was expected and what to change. Text from a
// stranger is read within limits of size, depth and number.
//
// Writing changes only what changed. A file written by hand keeps its comments,
// its blank lines and every number nobody touched, down to the byte; what is
// written is read again and compared before it is given out. Where that cannot
// be done the plan is written afresh, and [Report] says so. Saving never leaves
// half a file and keeps the version before.
//
// Files count lengths in their own unit; the plan counts millimetres. The keys,
// their limits and their defaults stand once, in the keys_*.go files; reading,
// writing and the JSON Schema all follow them.
package planfile
