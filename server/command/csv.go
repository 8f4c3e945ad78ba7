package command

import (
	"encoding/csv"
	"io"
	"strconv"

	"lintel/engine"
	"lintel/server/spreadsheet"
)

// writeCSV prints a series as comma-separated values (RFC 4180), one row a time:
//
//	t_s, hrr_kw, stage,
//	then for each compartment of the scenario, in its order: ID.upper_c,
//	ID.lower_c, ID.interface_m, ID.o2_upper, ID.o2_lower, ID.fuel_gas_upper,
//	ID.hrr_kw, ID.pressure_pa,
//	then for each opening: ID.in_kg_s, ID.out_kg_s, ID.neutral_m,
//	ID.top_velocity_m_s, ID.flow, ID.volume, ID.velocity, ID.density,
//	ID.darkness, ID.colour, ID.flame, ID.neutral_plane.
//
// A cell is empty where there is nothing: no layer, no neutral plane, no rating.
// Events are not in the table; -json has them.
func writeCSV(out io.Writer, scenario engine.Scenario, series engine.Series) error {
	w := csv.NewWriter(out)
	columns := seriesColumns(scenario, series)
	row := make([]string, len(columns))
	for i, c := range columns {
		row[i] = spreadsheet.Plain(c.name) // rooms and openings are called as the file has it
	}
	if err := w.Write(row); err != nil {
		return err
	}
	for k := range series.TS {
		for i, c := range columns {
			row[i] = c.cell(k)
		}
		if err := w.Write(row); err != nil {
			return err
		}
	}
	w.Flush()
	return w.Error()
}

// column is one named column and its cell at the k-th time.
type column struct {
	name string
	cell func(k int) string
}

func seriesColumns(scenario engine.Scenario, s engine.Series) []column {
	columns := []column{
		numbers("t_s", s.TS),
		numbers("hrr_kw", s.HRRKW),
		{"stage", func(k int) string { return string(s.Stage[k]) }},
	}
	for _, room := range scenario.Compartments {
		columns = append(columns, compartmentColumns(room.ID, s.Compartments[room.ID])...)
	}
	for _, o := range scenario.Openings {
		columns = append(columns, openingColumns(o.ID, s.Openings[o.ID])...)
	}
	return columns
}

func compartmentColumns(id string, c engine.CompartmentSeries) []column {
	return []column{
		numbers(id+".upper_c", c.UpperC),
		numbers(id+".lower_c", c.LowerC),
		gaps(id+".interface_m", c.InterfaceM),
		numbers(id+".o2_upper", c.O2Upper),
		numbers(id+".o2_lower", c.O2Lower),
		numbers(id+".fuel_gas_upper", c.FuelGasUpper),
		numbers(id+".hrr_kw", c.HRRKW),
		numbers(id+".pressure_pa", c.PressurePa),
	}
}

func openingColumns(id string, o engine.OpeningSeries) []column {
	columns := []column{
		numbers(id+".in_kg_s", o.InKgS),
		numbers(id+".out_kg_s", o.OutKgS),
		gaps(id+".neutral_m", o.NeutralM),
		numbers(id+".top_velocity_m_s", o.TopVelocityMS),
		{id + ".flow", func(k int) string { return seen(o.Cues, k, func(r engine.Reading) string { return string(r.Flow) }) }},
	}
	for _, cue := range engine.OrdinalCues {
		columns = append(columns, column{id + "." + string(cue), func(k int) string {
			return seen(o.Cues, k, func(r engine.Reading) string { return level(r.Level(cue)) })
		}})
	}
	return append(columns,
		column{id + ".colour", func(k int) string { return seen(o.Cues, k, func(r engine.Reading) string { return string(r.Colour) }) }},
		column{id + ".flame", func(k int) string { return seen(o.Cues, k, func(r engine.Reading) string { return string(r.Flame) }) }},
		column{id + ".neutral_plane", func(k int) string {
			return seen(o.Cues, k, func(r engine.Reading) string { return gap(r.NeutralPlane) })
		}})
}

// seen is a cell of the ratings, empty where an opening has none.
func seen(cues []engine.Reading, k int, cell func(engine.Reading) string) string {
	if k >= len(cues) {
		return ""
	}
	return cell(cues[k])
}

func numbers(name string, list []float64) column {
	return column{name, func(k int) string { return short(list[k]) }}
}

func gaps(name string, list []*float64) column {
	return column{name, func(k int) string { return gap(list[k]) }}
}

func gap(x *float64) string {
	if x == nil {
		return ""
	}
	return short(*x)
}

func level(n *int) string {
	if n == nil {
		return ""
	}
	return strconv.Itoa(*n)
}

// short keeps six digits, more than any of it is good for.
func short(x float64) string { return strconv.FormatFloat(x, 'g', 6, 64) }
