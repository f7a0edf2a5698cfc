package cutlist

import (
	"tubewright/bends/steps"
	"tubewright/route"
)

// withSteps adds a tube's order of work at the bench.
func (t Tube) withSteps(u route.Units) Tube {
	t.Steps = steps.Plan(steps.Job{
		Tube: t.Way.Formed, Cut: t.Cut, Bench: t.Bench, Material: t.Way.Tube.Material,
		Collars: [2]steps.Collar{collarOf(t.Way.Start.Socket), collarOf(t.Way.End.Socket)},
		Units:   u,
	}).Steps
	return t
}

func collarOf(socket route.Fitting) steps.Collar {
	return steps.Collar{Length: socket.Collar.Length, Insertion: socket.Insertion.Full}
}

type jsonStep struct {
	Kind   steps.Kind `json:"kind"`
	Bend   int        `json:"bend,omitempty"` // counts from 1 at end A
	End    string     `json:"end,omitempty"`
	Text   string     `json:"text"`
	Source string     `json:"source"`
}

func stepJSON(s steps.Step) jsonStep { return jsonStep{s.Kind, s.Bend, s.End, s.Text, s.Source} }
