//go:build !js

package engine_test

import (
	"bytes"
	"encoding/json"
	"os"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/require"

	"ledgewright/assets"
	"ledgewright/engine"
	"ledgewright/engine/shop"
	"ledgewright/testdata/jobs"
	"ledgewright/testdata/schema/describe"
)

func schema(t *testing.T, file string) *jsonschema.Schema {
	t.Helper()
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	require.NoError(t, c.AddResource(file, doc))
	s, err := c.Compile(file)
	require.NoError(t, err)
	return s
}

func requireValid(t *testing.T, s *jsonschema.Schema, text []byte) {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	require.NoError(t, err)
	require.NoError(t, s.Validate(doc))
}

const buildSchema = "../site/schema/build-1.schema.json"

// The schema is written from the types; this keeps the committed file from falling
// behind. Renew it with: go run ./testdata/schema > site/schema/build-1.schema.json
func TestBuildSchemaIsThatOfTheTypes(t *testing.T) {
	want, err := describe.Build("..")
	require.NoError(t, err)
	text, err := json.Marshal(want)
	require.NoError(t, err)
	have, err := os.ReadFile(buildSchema)
	require.NoError(t, err)
	require.JSONEq(t, string(text), string(have))
}

// Every example that is shipped: its plan, the profile in it, and its build.
func TestExamplesAreWithinTheirSchemas(t *testing.T) {
	builds, plans, shops := schema(t, buildSchema), schema(t, "../site/schema/plan-1.schema.json"), schema(t, "../site/schema/shop-1.schema.json")
	for _, name := range assets.Names() {
		text, err := assets.Text(name)
		require.NoError(t, err)
		requireValid(t, plans, text)
		p, err := assets.Plan(name)
		require.NoError(t, err)
		text, err = shop.Encode(p.Shop)
		require.NoError(t, err)
		requireValid(t, shops, text)
		text, err = engine.Encode(engine.Derive(p, nil))
		require.NoError(t, err)
		requireValid(t, builds, text)
	}
}

func TestEveryNumberOfABuildIsWithinItsSchema(t *testing.T) {
	s := schema(t, buildSchema)
	for seed := range uint64(150) {
		text, err := engine.Encode(engine.Derive(jobs.RandomPlan(seed), nil))
		require.NoError(t, err)
		requireValid(t, s, text)
	}
}
