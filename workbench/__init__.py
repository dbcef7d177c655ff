"""Trailbench: set up a bike's suspension and find out, with evidence, which change helped."""
