package commands

import "strings"

// fillers are words that carry nothing about what a number counts: a number
// before one of them is not a number of it.
var fillers = wordSet(`
a an the this that these those my your our his her their its it i you we they me us them he she
is are was were be been being am do does did doing have has had having can could will would shall should may might must
and or but so if then than as of to for from with without in on at by into onto out off up down over under about around round
please pls plz thanks thank ta hi hello hey dear kindly just only maybe perhaps well ok okay yes no not
what which how when where why who whose
each every all both any some more most much many few other another same such very quite really too also again still
i'm i've i'd i'll it's that's what's don't doesn't didn't can't won't isn't aren't you're we're let's
want need needs needed like make makes making made get gets got give gives given use uses using used go goes going went take takes took
sew sews sewing sewn say says said tell think know work works working come comes came put lay laid lies lie laying
there here now today tomorrow tonight later already instead rather actually sorry
measures measure measuring measured turns turned
exactly roughly approx approximately total altogether per plus minus equals between across through until till
bit lot lots kind sort thing things way ways one ones
`)

func wordSet(list string) map[string]bool {
	m := map[string]bool{}
	for w := range strings.FieldsSeq(list) {
		m[w] = true
	}
	return m
}
