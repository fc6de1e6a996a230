// Package pocket works out printed arithmetic as a pocket calculator in degree
// mode would, with an evaluator of another house. Tests hold the working that
// --explain shows against the figure with it.
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
	"sqrt": math.Sqrt,
}

// Evaluate returns what a sum comes to; degree signs are passed over.
func Evaluate(sum string) (float64, error) { return EvaluateIn(sum, nil) }

// EvaluateIn returns what a formula in letters comes to. A prime in a letter is an
// underscore to the evaluator.
func EvaluateIn(formula string, letters map[string]float64) (float64, error) {
	env := map[string]any{"pi": math.Pi}
	for name, f := range keys {
		env[name] = func(x any) float64 { return f(number(x)) }
	}
	for letter, v := range letters {
		env[strings.ReplaceAll(letter, "'", "_")] = v
	}
	v, err := expr.Eval(strings.NewReplacer("°", "", "'", "_").Replace(formula), env)
	if err != nil {
		return 0, err
	}
	return number(v), nil
}

// number is a float64 or an int of the evaluator's.
func number(v any) float64 {
	x, err := strconv.ParseFloat(fmt.Sprint(v), 64)
	if err != nil {
		return math.NaN()
	}
	return x
}
