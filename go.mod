module ledgewright

go 1.26
