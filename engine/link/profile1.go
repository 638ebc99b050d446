package link

// The default shop profiles of version 1 of the format, as canonical text. They stay as
// they are when the defaults change: see profile.go.
const (
	metricProfile1 = `{"brackets":{"firstDiameters":4,"fixed":125,"kind":"rod-structure","overhang":4,"rule":"studs"},"covers":{"bor` +
		`e":6,"boreToHeel":20,"boreToSlot":3,"front":25,"plate":1,"pocket":3,"pocketToHeel":10,"slot":5,"slotThin":3,"t` +
		`hin":20},"gaps":{"apart":20,"ceiling":50,"frame":5,"inFront":20,"socket":150,"touching":3},"grooves":{"channel` +
		`Play":0.2,"deepestPart":3,"fromFront":20,"pass":3,"stopJoint":40,"stopShown":15},"joints":{"dowelPitch":75,"ho` +
		`usingDepthPart":3,"keyInside":6,"keyPitch":65,"screwPitch":100,"splineHeel":6,"splinePlay":1,"tenonEdge":30,"t` +
		`enonPitch":150},"machines":{"drillStroke":80,"saw":{"crosscut":300,"heightAt45":60,"maxTilt":45,"stopReach":20` +
		`00,"stopRight":true,"tiltsLeft":true},"wander":1},"moisture":{"shop":8,"useHigh":11,"useLow":6},"rods":{"deepe` +
		`r":5,"inStudDiameters":6,"inStudLeast":75,"slackSingle":1,"slackWelded":0.5},"schema":"ledgewright/shop/1","st` +
		`ock":{"kerf":3.2,"length":50,"sanding":0.3,"thickness":6,"thicknesses":[20,26,32,44],"width":8},"system":"mm",` +
		`"tape":{"bench":0.5,"site":1}}`

	inchProfile1 = `{"brackets":{"firstDiameters":4,"fixed":127,"kind":"rod-structure","overhang":4,"rule":"studs"},"covers":{"bor` +
		`e":6.35,"boreToHeel":20.6375,"boreToSlot":3.175,"front":25.4,"plate":0.79375,"pocket":3.175,"pocketToHeel":9.5` +
		`25,"slot":4.7625,"slotThin":3.175,"thin":20.6375},"gaps":{"apart":20.6375,"ceiling":50.8,"frame":4.7625,"inFro` +
		`nt":20.6375,"socket":152.4,"touching":3.175},"grooves":{"channelPlay":0.396875,"deepestPart":3,"fromFront":20.` +
		`6375,"pass":3.175,"stopJoint":41.275,"stopShown":15.875},"joints":{"dowelPitch":76.2,"housingDepthPart":3,"key` +
		`Inside":6.35,"keyPitch":63.5,"screwPitch":101.6,"splineHeel":6.35,"splinePlay":0.79375,"tenonEdge":31.75,"teno` +
		`nPitch":152.4},"machines":{"drillStroke":79.375,"saw":{"crosscut":304.8,"heightAt45":57.15,"maxTilt":45,"stopR` +
		`each":2032,"stopRight":true,"tiltsLeft":true},"wander":1.190625},"moisture":{"shop":8,"useHigh":11,"useLow":6}` +
		`,"rods":{"deeper":4.7625,"inStudDiameters":6,"inStudLeast":76.2,"slackSingle":1.5875,"slackWelded":0.79375},"s` +
		`chema":"ledgewright/shop/1","stock":{"kerf":3.175,"length":50.8,"sanding":0.396875,"thickness":6.35,"thickness` +
		`es":[20.6375,26.19375,31.75,44.45],"width":7.9375},"system":"in","tape":{"bench":0.79375,"site":1.5875}}`
)
