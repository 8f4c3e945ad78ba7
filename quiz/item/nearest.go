package item

import (
	"math"

	"lintel/engine"
	"lintel/engine/cue"
	"lintel/quiz"
)

// nearest names the shown openings that lie the fewest rooms from the one that
// burns most, and by how much the smoke tells it: in speed or in darkness it must
// lead every other opening by more than the least difference that people see. Where
// the family is about what misleads it is enough that one opening is plainly the
// fastest, be it the nearest or another.
func (j *judgement) nearest(a Ask, reply quiz.Reply) ([]quiz.Reply, float64, error) {
	rooms := j.roomsFromSeat()
	least := math.MaxInt
	for _, id := range j.family.Show {
		least = min(least, rooms[id])
	}
	near, far := leading{}, leading{}
	var accept []quiz.Reply
	for _, id := range j.family.Show {
		rating, err := j.walk.rate(j.walk.run, id)
		if err != nil {
			return nil, 0, err
		}
		if rooms[id] > least {
			far.add(&rating)
			continue
		}
		near.add(&rating)
		reply.Opening = id
		accept = append(accept, reply)
	}
	if len(accept) == len(j.family.Show) {
		return nil, 0, nil
	}
	speed, shade := lead(near.speed, far.speed), lead(near.shade, far.shade)
	if a.Despite {
		return accept, math.Abs(speed), nil
	}
	return accept, math.Max(speed, shade), nil
}

// leading is the fastest and the darkest smoke of some openings.
type leading struct{ speed, shade float64 }

func (l *leading) add(r *cue.Rating) {
	l.speed = math.Max(l.speed, measureOf(engine.CueVelocity, r))
	l.shade = math.Max(l.shade, measureOf(engine.CueDarkness, r))
}

// lead is how far one measure stands above another, beyond what may pass for the
// same: 0 at changeRatio, negative where it is the lower.
func lead(ours, theirs float64) float64 {
	if !(ours > 0) && !(theirs > 0) {
		return 0
	}
	answer, margin, _ := ratioChange(theirs, ours)
	switch answer {
	case quiz.More:
		return margin
	case quiz.Less:
		return -margin
	}
	return 0
}

// roomsFromSeat counts, for each opening to the open air, the rooms between it and
// the one that burns most, through whatever openings the building has.
func (j *judgement) roomsFromSeat() map[string]int {
	scene, burning := j.walk.scene, j.walk.run.Model().Rooms
	seat := 0
	for i := range burning {
		if burning[i].Out.BurnW > burning[seat].Out.BurnW {
			seat = i
		}
	}
	steps := map[string]int{scene.Compartments[seat].ID: 0}
	for range scene.Compartments {
		for i := range scene.Openings {
			spread(steps, scene.Openings[i].From, scene.Openings[i].To)
			spread(steps, scene.Openings[i].To, scene.Openings[i].From)
		}
	}
	rooms := map[string]int{}
	for i := range scene.Openings {
		if o := &scene.Openings[i]; o.To == engine.Outside {
			rooms[o.ID] = len(scene.Compartments)
			if n, reached := steps[o.From]; reached {
				rooms[o.ID] = n
			}
		}
	}
	return rooms
}

func spread(steps map[string]int, from, to string) {
	n, reached := steps[from]
	if !reached || from == engine.Outside || to == engine.Outside {
		return
	}
	if had, known := steps[to]; !known || had > n+1 {
		steps[to] = n + 1
	}
}
