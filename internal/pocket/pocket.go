// Package pocket works out printed arithmetic as a pocket calculator in degree
// mode would, with an evaluator of another house (expr-lang/expr). Only tests
// use it: they hold the working that --explain shows against the figure.
package pocket

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/expr-lang/expr"
)

const degree = math.Pi / 180

// keys are the functions of such a calculator beside those that the evaluator
// has itself.
var keys = map[string]func(float64) float64{
	"sin":  func(x float64) float64 { return math.Sin(x * degree) },
	"cos":  func(x float64) float64 { return math.Cos(x * degree) },
	"tan":  func(x float64) float64 { return math.Tan(x * degree) },
	"asin": func(x float64) float64 { return math.Asin(x) / degree },
	"acos": func(x float64) float64 { return math.Acos(x) / degree },
	"atan": func(x float64) float64 { return math.Atan(x) / degree },
}

func options() []expr.Option {
	opts := []expr.Option{expr.Env(env)}
	for name, f := range keys {
		opts = append(opts, expr.Function(name, func(args ...any) (any, error) {
			x, err := strconv.ParseFloat(fmt.Sprint(args[0]), 64)
			return f(x), err
		}, new(func(float64) float64), new(func(int) float64)))
	}
	return opts
}

var env = map[string]any{"pi": math.Pi}

// Evaluate returns what a sum comes to; degree signs are passed over.
func Evaluate(sum string) (float64, error) {
	program, err := expr.Compile(strings.ReplaceAll(sum, "°", ""), options()...)
	if err != nil {
		return 0, err
	}
	v, err := expr.Run(program, env)
	if err != nil {
		return 0, err
	}
	return strconv.ParseFloat(fmt.Sprint(v), 64)
}
