package nest

import (
	"fmt"
	"strings"
)

// NumberError says that a number of the job cannot be, and what it must be.
type NumberError struct {
	What string // "piece 3: length"; pieces and bars count from 1
	Have int
	Need string // "above 0"
}

func (e *NumberError) Error() string {
	return fmt.Sprintf("%s is %d; it must be %s", e.What, e.Have, e.Need)
}

// TooLongError lists the pieces that no bar is long enough for.
type TooLongError struct {
	Pieces  []Piece // longest first
	Longest int     // the longest bar there is, hundredths of a millimetre; 0: there is none
}

func (e *TooLongError) Error() string {
	if e.Longest == 0 {
		return "there is no bar to cut from; add a stock length or an offcut"
	}
	worst := e.Pieces[0].Length
	return fmt.Sprintf("%s longer than the longest bar of %s: %s; add a stock length of at least %s",
		pieceWord(e.Pieces), Decimal(e.Longest), listPieces(e.Pieces), Decimal(worst))
}

// TooFewError lists the pieces that stay uncut because the bars are limited.
// The result that comes with it is a plan for all others.
type TooFewError struct {
	Uncut  []Piece // longest first
	Proven bool    // that no plan cuts more pieces; else only that none was found
}

func (e *TooFewError) Error() string {
	why := "the bars do not suffice"
	if !e.Proven {
		why = "no plan was found in which the bars suffice"
	}
	return fmt.Sprintf("%s; %s: %s; raise a limit, add an offcut or ask for fewer",
		why, "uncut", listPieces(e.Uncut))
}

// TooManyError says that the job is beyond what the package takes on.
type TooManyError struct {
	What        string // "pieces" or "different lengths"
	Have, Limit int
}

func (e *TooManyError) Error() string {
	return fmt.Sprintf("%d %s; at most %d can be nested at once: split the job", e.Have, e.What, e.Limit)
}

func pieceWord(p []Piece) string {
	if len(p) == 1 && p[0].Count == 1 {
		return "one piece is"
	}
	return "pieces are"
}

func listPieces(p []Piece) string {
	words := make([]string, len(p))
	for i, q := range p {
		words[i] = Decimal(q.Length).String()
		if q.Count > 1 {
			words[i] = fmt.Sprintf("%d of %s", q.Count, words[i])
		}
	}
	return strings.Join(words, ", ")
}
