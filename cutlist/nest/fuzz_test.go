package nest_test

import (
	"context"
	"encoding/binary"
	"errors"
	"testing"

	"tubewright/cutlist/nest"
)

// fuzzJob makes a job of bytes, with numbers of every size, also such as cannot be.
func fuzzJob(data []byte) nest.Job {
	next := func() int {
		if len(data) < 2 {
			return 0
		}
		kind, n := data[0]%8, int(data[1])
		data = data[2:]
		switch kind {
		case 0:
			return -n
		case 1:
			return n << 34
		case 2, 3:
			if len(data) >= 2 {
				n = n<<16 | int(binary.LittleEndian.Uint16(data))
				data = data[2:]
			}
		}
		return n
	}
	job := nest.Job{Kerf: next(), KeepOver: next()}
	for range next() % 5 {
		job.Stock = append(job.Stock, nest.Bar{Length: next(), Price: next(), Most: next()})
	}
	for range next() % 5 {
		job.Offcuts = append(job.Offcuts, nest.Bar{Length: next(), Most: next()})
	}
	for len(data) >= 4 {
		job.Pieces = append(job.Pieces, nest.Piece{Length: next(), Count: next()})
	}
	return job
}

// Whatever the job, Solve ends with a sound plan whose bound is accepted, or with
// a typed error.
func FuzzSolve(f *testing.F) {
	f.Add([]byte{})
	f.Add([]byte{4, 1, 4, 12, 4, 1, 4, 100, 4, 7, 4, 0, 4, 0, 4, 30, 4, 3, 4, 20, 4, 9})
	f.Add([]byte{4, 0, 4, 0, 4, 2, 4, 100, 4, 7, 4, 1, 4, 90, 4, 6, 4, 1, 4, 1, 4, 31, 4, 2, 4, 30, 4, 9})
	f.Add([]byte{0, 1, 0, 1, 4, 1, 1, 255, 1, 255, 0, 3, 4, 0, 2, 255, 255, 255, 2, 1, 1, 1})
	f.Fuzz(func(t *testing.T, data []byte) {
		job := fuzzJob(data)
		r, err := nest.Solve(context.Background(), job, nest.Options{Budget: 300_000})
		checkSolved(t, job, r, err)
	})
}

func checkSolved(t *testing.T, job nest.Job, r nest.Result, err error) {
	t.Helper()
	var number *nest.NumberError
	var long *nest.TooLongError
	var many *nest.TooManyError
	var few *nest.TooFewError
	switch {
	case errors.As(err, &number), errors.As(err, &long), errors.As(err, &many):
		return
	case errors.As(err, &few):
		if len(few.Uncut) == 0 || r.Proven {
			t.Fatalf("%+v: %v, proven %v", job, err, r.Proven)
		}
		if r.Bars > 0 {
			checkPlan(t, job, r, few.Uncut)
		}
	case err != nil:
		t.Fatalf("%+v: %v", job, err)
	default:
		checkPlan(t, job, r, nil)
		if err := checkCertificate(job, r.Bound, r.Certificate); err != nil && !errors.Is(err, errUntried) && !errors.Is(err, errTooLarge) {
			t.Fatalf("%+v: bound %d: %v", job, r.Bound, err)
		}
	}
}
