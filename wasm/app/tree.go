package app

import (
	"ledgewright/engine/document"
	"ledgewright/engine/plan"
)

// A written is a plan as it was last written, and its modules as nodes: most modules stay
// as they are from one time to the next, and most of a plan is modules.
type written struct {
	modules []plan.Module
	nodes   []document.Node
}

// tree returns the plan as a node, and what to give it the next time.
func (w *written) tree(p plan.Plan) (document.Node, *written, error) {
	now := &written{modules: p.Modules, nodes: make([]document.Node, len(p.Modules))}
	for i := range p.Modules {
		if w != nil && i < len(w.modules) && w.modules[i].Shares(&p.Modules[i]) {
			now.nodes[i] = w.nodes[i]
			continue
		}
		var err error
		if now.nodes[i], err = document.Tree(p.Modules[i]); err != nil {
			return document.Node{}, nil, err
		}
	}
	bare := p
	bare.Modules = nil
	n, err := document.Tree(bare)
	if err != nil {
		return n, nil, err
	}
	n = n.Without("modules")
	n.Kids = append(n.Kids, document.ArrayNode(now.nodes...).With("modules"))
	return n, now, nil
}
