package scope

import "fmt"

// Node is one node of a Network.
type Node struct {
	Name          string
	Cost, Benefit int64
	Needs         []string
}

// Network is a problem with names.
type Network []Node

// Problem numbers the nodes in their order. A need that names no node is an error.
func (n Network) Problem() (*Problem, error) {
	p := &Problem{Benefit: make([]int64, len(n)), Cost: make([]int64, len(n))}
	for i, node := range n {
		p.Benefit[i], p.Cost[i] = node.Benefit, node.Cost
		for _, need := range node.Needs {
			j := n.Find(need)
			if j < 0 {
				return nil, fmt.Errorf("scope: %s needs %s, which is no node", node.Name, need)
			}
			p.Arcs = append(p.Arcs, [2]int32{int32(i), int32(j)})
		}
	}
	return p, p.Check()
}

// Find gives the number of a node, -1 for none.
func (n Network) Find(name string) int {
	for i, node := range n {
		if node.Name == name {
			return i
		}
	}
	return -1
}

// Names lists the members of a set in order.
func (n Network) Names(member []bool) []string {
	names := []string{}
	for i, in := range member {
		if in {
			names = append(names, n[i].Name)
		}
	}
	return names
}
