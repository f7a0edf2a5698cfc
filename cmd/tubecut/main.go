// Command tubecut plans without a screen.
package main

func main() {}
