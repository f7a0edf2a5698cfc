package planfile

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"
)

// What a file may hold. A plan of two hundred parts has a few tens of
// kilobytes; the bounds keep a hostile file under some hundreds of megabytes
// of memory and a few seconds.
const (
	// MaxBytes is the largest plan file that is read.
	MaxBytes = 4 << 20
	// maxMarks bounds the characters that can start a YAML value, and so the
	// number of nodes: each takes about a quarter of a kilobyte in the tree.
	maxMarks = 250_000
	// maxDepth is how deep values may stand in each other. The format needs 8.
	maxDepth = 24
	// maxEntries bounds each list and each mapping: parts, runs, corners.
	maxEntries = 10_000
)

// document is one parsed file.
type document struct {
	file string
	lines
	root *yaml.Node // nil when the file is empty or not YAML
	bom  bool
}

const byteOrderMark = "\uFEFF"

// parse makes a tree of a file. Of a text that is no YAML it gives the first
// fault only: after one, the rest cannot be trusted. Otherwise it gives, with
// the tree, what YAML allows and plans do not.
func parse(file string, data []byte) (document, Problems) {
	text, bom := strings.CutPrefix(string(data[:min(len(data), MaxBytes+1)]), byteOrderMark)
	doc := document{file: file, lines: newLines(text), bom: bom}
	if p := doc.unreadable(len(data)); p != nil {
		return doc, p
	}
	root, err := decodeOne(text)
	if err != nil {
		return doc, Problems{doc.syntax(err)}
	}
	doc.root = root
	return doc, doc.unwanted(root, 0, nil)
}

// at makes a problem at a place of the file.
func (d document) at(line, col int, what, fix string) Problem {
	return Problem{File: d.file, Line: line, Col: col, What: what, Fix: fix, Text: d.excerpt(line, col)}
}

// unreadable refuses what should not even reach the YAML parser.
func (d document) unreadable(size int) Problems {
	if size > MaxBytes {
		return Problems{d.at(1, 1, fmt.Sprintf("the file is larger than %d bytes", MaxBytes),
			"A plan is a few kilobytes of text; check that this is the right file.")}
	}
	if bad := invalidUTF8(d.text); bad >= 0 {
		line, col := d.place(bad)
		return Problems{d.at(line, col, "the file is not UTF-8 text", "Save it from your editor with the encoding UTF-8.")}
	}
	if marks := countMarks(d.text); marks > maxMarks {
		return Problems{d.at(1, 1, fmt.Sprintf("the file holds more than %d values", maxMarks),
			"Check that this is the right file; split a machine this large into several plans.")}
	}
	return nil
}

// invalidUTF8 gives the first byte that is no UTF-8, or -1.
func invalidUTF8(text string) int {
	for i, r := range text {
		if r == utf8.RuneError {
			if _, size := utf8.DecodeRuneInString(text[i:]); size <= 1 {
				return i
			}
		}
	}
	return -1
}

// countMarks counts the characters without which no YAML value can start.
func countMarks(text string) int {
	n := 0
	for i := range len(text) {
		switch text[i] {
		case ',', ':', '-', '[', '{', '?', '\n', '\r':
			n++
		}
	}
	return n
}

var errTwoDocuments = errors.New("a second document")

// decodeOne gives the tree of the only document in the text, nil when there is
// none. The YAML package is known to panic on rare malformed texts; what it
// throws comes back as an error like its others.
func decodeOne(text string) (root *yaml.Node, err error) {
	defer func() {
		if thrown := recover(); thrown != nil {
			root, err = nil, fmt.Errorf("yaml: %v", thrown)
		}
	}()
	dec := yaml.NewDecoder(bytes.NewReader([]byte(text)))
	var doc, second yaml.Node
	if err := dec.Decode(&doc); errors.Is(err, io.EOF) {
		return nil, nil
	} else if err != nil {
		return nil, err
	}
	if err := dec.Decode(&second); err == nil {
		return nil, &secondDocument{second.Line}
	} else if !errors.Is(err, io.EOF) {
		return nil, err
	}
	return doc.Content[0], nil
}

// secondDocument says that a file holds more than one YAML document.
type secondDocument struct{ line int }

func (e *secondDocument) Error() string { return errTwoDocuments.Error() }

// unwanted refuses what YAML has and plans do not: anchors, aliases, tags, and
// values nested without end.
func (d document) unwanted(n *yaml.Node, depth int, ps Problems) Problems {
	if n == nil || len(ps) > maxProblems {
		return ps
	}
	if what, fix := oddity(n, depth); what != "" {
		return append(ps, d.at(n.Line, n.Column, what, fix))
	}
	for _, child := range n.Content {
		ps = d.unwanted(child, depth+1, ps)
	}
	return ps
}

func oddity(n *yaml.Node, depth int) (what, fix string) {
	switch {
	case depth > maxDepth:
		return fmt.Sprintf("values stand more than %d deep in each other", maxDepth), "No part of a plan is nested like this; take the extra brackets or indents out."
	case n.Kind == yaml.AliasNode:
		return fmt.Sprintf("the alias *%s stands for another value", n.Value), "Write the value out: plans do not use aliases."
	case n.Anchor != "":
		return fmt.Sprintf("the anchor &%s names a value", n.Anchor), "Take the anchor away and write the value out where it is used."
	case n.Style&yaml.TaggedStyle != 0:
		return fmt.Sprintf("the tag %s stands before a value", n.Tag), "Take the tag away: plans do not use tags."
	}
	return "", ""
}
