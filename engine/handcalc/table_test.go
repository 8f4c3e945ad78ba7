package handcalc_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine/handcalc"
	"lintel/engine/internal/published"
)

// check compares one computed value with its published one.
func check(t *testing.T, row published.Row, want, got float64) {
	t.Helper()
	assert.InDelta(t, want, got, row.Allowed(want), row.Name)
}

func room(row published.Row) handcalc.Room {
	return handcalc.Room{LengthM: row.Float("length_m"), WidthM: row.Float("width_m"), HeightM: row.Float("height_m")}
}

func lining(row published.Row) handcalc.Lining {
	return handcalc.Lining{
		ConductivityKWMK: row.Float("conductivity_kw_mk"), DensityKgM3: row.Float("density_kg_m3"),
		HeatKJKgK: row.Float("heat_kj_kgk"),
	}
}

func TestMQH(t *testing.T) {
	for _, row := range published.Read(t, "handcalc/mqh.csv").Rows {
		wall := lining(row)
		wall.ThicknessM = row.Float("thickness_m")
		vent := handcalc.Vent{WidthM: row.Float("vent_width_m"), HeightM: row.Float("vent_height_m")}
		open := handcalc.OpenRoom{Room: room(row), Vent: vent, Lining: wall, HRRKW: row.Float("hrr_kw")}
		rise, err := handcalc.MQH(open, row.Float("time_s"))
		require.NoError(t, err)
		check(t, row, row.Float("expected"), row.Float("ambient_c")+rise)
	}
}

func TestClosedRoom(t *testing.T) {
	for _, row := range published.Read(t, "handcalc/closed_room.csv").Rows {
		closed := handcalc.ClosedRoom{Room: room(row), Lining: lining(row), HRRKW: row.Float("hrr_kw"), AmbientC: row.Float("ambient_c")}
		check(t, row, row.Float("expected"), closed.AmbientC+handcalc.Beyler(closed, row.Float("time_s")))
	}
}

func TestForcedVentilation(t *testing.T) {
	for _, row := range published.Read(t, "handcalc/forced.csv").Rows {
		check(t, row, row.Float("foote_pagni_alvares"), 15+handcalc.FootePagniAlvares(fannedRoom, row.Float("time_s")))
		check(t, row, row.Float("deal_beyler"), 15+handcalc.DealBeyler(fannedRoom, row.Float("time_s")))
	}
}

func TestLayerFilling(t *testing.T) {
	for _, row := range published.Read(t, "handcalc/filling.csv").Rows {
		check(t, row, row.Float("aset"), handcalc.LayerDepthASET(fillingRoom, row.Float("time_s")))
		check(t, row, row.Float("yamana_tanaka"), handcalc.LayerDepthYamanaTanaka(fillingRoom, row.Float("time_s")))
	}
}

func TestPlume(t *testing.T) {
	rise, err := handcalc.PlumeRise(poolFire, 6)
	require.NoError(t, err)
	got := map[string]float64{
		"centreline temperature degC":           22 + rise,
		"centreline temperature McCaffrey degC": 22 + handcalc.McCaffreyRise(poolFire, 6),
		"fire diameter m":                       poolFire.Diameter(),
		"virtual origin m":                      poolFire.VirtualOrigin(),
		"mean flame height m":                   handcalc.FlameHeight(poolFire),
	}
	checkNamed(t, published.Read(t, "handcalc/plume.csv"), got)

	_, err = handcalc.PlumeRise(poolFire, 2)
	assert.Error(t, err, "2 m is inside a flame of 2.87 m")
}

// checkNamed compares every row of a table with the value of its name.
func checkNamed(t *testing.T, table *published.Table, got map[string]float64) {
	t.Helper()
	require.Len(t, got, len(table.Rows))
	for _, row := range table.Rows {
		require.Contains(t, got, row.Name)
		check(t, row, row.Float("expected"), got[row.Name])
	}
}

func TestCeilingJet(t *testing.T) {
	under := handcalc.Ceiling{HRRKW: 10.23, HeightM: 2.1, RadiusM: 1.3}
	checkNamed(t, published.Read(t, "handcalc/jet.csv"), map[string]float64{
		"rise K": handcalc.JetRise(under), "speed m/s": handcalc.JetSpeed(under),
	})

	axis := handcalc.Ceiling{HRRKW: 10.23, HeightM: 2.1}
	assert.Greater(t, handcalc.JetRise(axis), handcalc.JetRise(under), "hottest over the fire")
	assert.Greater(t, handcalc.JetSpeed(axis), handcalc.JetSpeed(under), "fastest over the fire")
}

func TestFlames(t *testing.T) {
	for _, row := range published.Read(t, "handcalc/flame.csv").Rows {
		if !row.Has("heat_star") {
			check(t, row, row.Float("expected"), handcalc.FlameHeightSimple(1000))
			continue
		}
		check(t, row, row.Float("expected"), handcalc.FlameRatio(row.Float("heat_star")))
	}
}

func TestPointSource(t *testing.T) {
	for _, row := range published.Read(t, "handcalc/radiation.csv").Rows {
		got := handcalc.PointSource(burner, row.Float("across_m"))
		if row.Text("kind") == "aside" {
			got = handcalc.PointSourceAside(burner, row.Float("across_m"), 0)
		}
		check(t, row, row.Float("expected"), got)
	}
}

func TestFlashover(t *testing.T) {
	for _, row := range published.Read(t, "handcalc/flashover.csv").Rows {
		e := handcalc.Enclosure{VentFactor: row.Float("vent_factor")}
		if row.Has("surface_m2") {
			e.SurfaceM2 = row.Float("surface_m2")
		}
		var got float64
		switch row.Text("correlation") {
		case "mqh":
			e.TransferKWM2K = row.Float("transfer_kw_m2k")
			got = handcalc.FlashoverMQH(e)
		case "thomas":
			got = handcalc.FlashoverThomas(e)
		case "babrauskas":
			got = handcalc.FlashoverBabrauskas(e.VentFactor)
		case "cibse":
			got = handcalc.FlashoverCIBSE(e.VentFactor)
		}
		check(t, row, row.Float("expected"), got)
	}
}
