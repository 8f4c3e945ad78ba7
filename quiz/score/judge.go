package score

import (
	"lintel/engine"
	"lintel/quiz"
)

// Judge scores each ask of an item. accept holds, for each ask in order, every
// right reply. The verdict's words of explanation are left to the caller. The
// error is an *engine.Problem in the answer.
func Judge(item *quiz.Item, accept [][]quiz.Reply, answer *quiz.Answer) (quiz.Verdict, error) {
	verdict := quiz.Verdict{V: 1, Engine: item.Engine}
	given, err := byAsk(item, answer)
	if err != nil {
		return verdict, err
	}
	sum := 0.0
	for i, ask := range item.Question.Asks {
		part := judgePart(item, ask, accept[i], given[ask.ID])
		verdict.Parts = append(verdict.Parts, part)
		sum += part.Error
	}
	verdict.Score = 1 - sum/float64(len(item.Question.Asks))
	if came, sure := Came(verdict.Parts); sure && answer.Confidence != nil {
		brier := Brier(*answer.Confidence, came)
		verdict.Brier = &brier
	}
	if item.Kind == quiz.CallStage {
		overlap := callOverlap(verdict.Parts)
		verdict.Overlap = &overlap
	}
	return verdict, nil
}

// byAsk checks the answer and puts its replies by the ask they answer.
func byAsk(item *quiz.Item, answer *quiz.Answer) (map[string]*quiz.Reply, error) {
	if c := answer.Confidence; c != nil && !(*c >= 0.5 && *c <= 1) {
		return nil, engine.Bad("confidence", "is out of range", "give a number from 0.5 to 1")
	}
	kinds := map[string]quiz.AskKind{}
	for _, ask := range item.Question.Asks {
		kinds[ask.ID] = ask.Kind
	}
	given := map[string]*quiz.Reply{}
	for i := range answer.Replies {
		reply := &answer.Replies[i]
		where := place(i)
		kind, known := kinds[reply.Ask]
		switch {
		case !known:
			return nil, engine.Bad(where+".ask", "is none of this item's questions", "answer the questions of the item")
		case given[reply.Ask] != nil:
			return nil, engine.Bad(where+".ask", "is answered twice", "answer each question once")
		}
		if err := checkReply(where, kind, item.Show, reply); err != nil {
			return nil, err
		}
		given[reply.Ask] = reply
	}
	return given, nil
}

func judgePart(item *quiz.Item, ask quiz.Ask, accept []quiz.Reply, reply *quiz.Reply) quiz.Part {
	part := quiz.Part{Ask: ask.ID, Kind: ask.Kind, Cue: ask.Cue, Given: quiz.Reply{Ask: ask.ID, Unsure: true}, Truth: accept}
	if reply == nil {
		part.Error, part.Remark = 1, "remark/unanswered"
		return part
	}
	part.Given = *reply
	if reply.Unsure {
		part.Error = blind(ask.Kind, item.Show, accept)
		part.Remark = remark(ask.Kind, &part)
		return part
	}
	if ask.Kind == quiz.AskMoment {
		judgeReport(&part, item.Watch)
		return part
	}
	part.Error = distance(ask.Kind, reply, accept)
	part.Right = part.Error <= slack(ask.Kind)
	if ask.Kind == quiz.AskLevel {
		steps := signedSteps(*reply.Level, accept)
		part.Steps = &steps
	}
	part.Remark = remark(ask.Kind, &part)
	return part
}
