// Command tubewright opens the planning window.
package main

func main() {}
