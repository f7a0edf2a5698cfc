package survey_test

import (
	"bytes"
	"errors"
	"strings"
	"testing"

	"tubewright/route"
	"tubewright/route/survey"
)

func written(t *testing.T, p route.Plan) string {
	t.Helper()
	var out bytes.Buffer
	if err := survey.WriteCSV(&out, p); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

func TestTheEmptySurvey(t *testing.T) {
	const want = "part,port,letter,x_from,x,y_from,y,z_from,z,facing,thread\r\n" +
		"pump,out,a,left,,floor,,back,,,\r\n" +
		"block,a,a,right,,floor,,back,,,\r\n" +
		"block,b,b,right,,floor,,back,,,\r\n" +
		"block,c,c,right,,floor,,back,,,\r\n" +
		"block,d,d,right,,floor,,back,,,\r\n"
	p := machine()
	if got := written(t, p); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	if list, err := survey.ReadCSV(strings.NewReader(written(t, p)), p); err != nil || len(list) != 0 {
		t.Errorf("an empty survey reads as %v, %v", list, err)
	}
}

// Filled in by a spreadsheet of either habit, it means the same.
func TestReadCSV(t *testing.T) {
	p := machine()
	for name, text := range map[string]string{
		"commas":                       "part,port,letter,x_from,x,y_from,y,z_from,z,facing,thread\r\nblock,b,b,right,79.5,floor,40,back,20.25,+x,G1/4\r\n",
		"semicolons":                   "\ufeffpart;port;letter;x_from;x;y_from;y;z_from;z;facing;thread\nblock;b;b;right;79,5;floor;40;back;20,25;'+x;G1/4\npump;out;a;left;;floor;;back;;;\n",
		"few columns in another order": "z,y,x,port,part\n20.25,40,79.5,b,block\n",
	} {
		list, err := survey.ReadCSV(strings.NewReader(text), p)
		if err != nil || len(list) != 1 {
			t.Errorf("%s: %v, %v", name, list, err)
			continue
		}
		if r := list[0]; r.Ref != ref("block.b") || r.Distance != [3]float64{79.5, 40, 20.25} || r.At(p.Case) != (vec{320.5, 40, 20.25}) {
			t.Errorf("%s: %+v", name, r)
		}
	}
}

func TestReadCSVInInches(t *testing.T) {
	p := machine()
	p.Units = route.Inches
	list, err := survey.ReadCSV(strings.NewReader("part,port,x,y,z\npump,out,1,2,0.5\n"), p)
	if err != nil || list[0].Distance != [3]float64{25.4, 50.8, 12.7} {
		t.Errorf("%+v, %v", list, err)
	}
}

// A name that a spreadsheet would run comes back as it was.
func TestNamesLikeFormulas(t *testing.T) {
	p := machine()
	p.Parts[0].Name = "=pump"
	p.Runs = nil
	text := written(t, p)
	if !strings.Contains(text, "'=pump,out") {
		t.Errorf("a formula is written: %s", text)
	}
	text = strings.Replace(text, "left,,floor,,back,,,", "left,1,floor,2,back,3,,", 1)
	if list, err := survey.ReadCSV(strings.NewReader(text), p); err != nil || len(list) != 1 || list[0].Ref.Part != "=pump" {
		t.Errorf("%+v, %v", list, err)
	}
}

func TestReadCSVTellsAllThatIsWrong(t *testing.T) {
	const head = "part,port,x_from,x,y_from,y,z_from,z,facing\n"
	for _, c := range []struct {
		name, text string
		want       []string
	}{
		{"empty", "", []string{"line 1: the file is empty"}},
		{"no heads", "1,2,3\n", []string{`no column "part"`, `no column "z"`}},
		{"open quote", head + "\"pump,out\n", []string{"line 2"}},
		{"a gap", head + "pump,out,left,10,floor,,back,30,\n", []string{"line 2: pump.out has no y"}},
		{
			"two bad rows", head + "pump,in,left,10,floor,1,back,30,\nblock,a,floor,1,floor,x,back,3,up\n",
			[]string{"line 2: the plan has no port pump.in", `line 3: x of block.a is not taken from "floor"`, `line 3: y of block.a is no distance: "x"`, "is no facing"},
		},
		{"far away", head + "pump,out,left,1e9,floor,1,back,30,\n", []string{"no distance"}},
		{"too long", strings.Repeat("x", survey.MaxBytes+1), []string{"longer than"}},
	} {
		_, err := survey.ReadCSV(strings.NewReader(c.text), machine())
		var row *survey.RowError
		if !errors.As(err, &row) || row.Fix == "" {
			t.Errorf("%s: %v, want RowErrors with a way out", c.name, err)
			continue
		}
		for _, want := range c.want {
			if !strings.Contains(err.Error(), want) {
				t.Errorf("%s: not told: %s\n%v", c.name, want, err)
			}
		}
	}
}

// FuzzReadCSV: whatever is in the file, it is read or refused, never worse.
func FuzzReadCSV(f *testing.F) {
	f.Add("part,port,x,y,z\npump,out,1,2,3\n")
	f.Add("part;port;x;y;z;facing\npump;out;1,5;2;3;+x\n\"")
	f.Fuzz(func(t *testing.T, text string) {
		p := machine()
		list, err := survey.ReadCSV(strings.NewReader(text), p)
		if err != nil {
			return
		}
		if _, _, err := survey.Take(p, list, survey.Options{}); err != nil {
			var bad *survey.ReadingError
			if !errors.As(err, &bad) {
				t.Error(err)
			}
		}
	})
}
