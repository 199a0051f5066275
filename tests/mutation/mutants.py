"""Small faults put into a module, one at a time: which there are, and the module with one of them.

A mutant is one edit of the syntax tree: an arithmetic sign, a comparison or its boundary, a number,
a minus, a function exchanged for its counterpart, a condition turned round, a result replaced by
one of its operands, a keyword argument or a statement left out.  Docstrings, other text,
annotations, decorators and the ``strict`` of ``zip`` are left alone.
"""

from __future__ import annotations

import ast
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from types import CodeType
from typing import Any

Owner = tuple[str, int]  # qualified name and first line of a function, as its code object has them

ARITHMETIC: dict[type[ast.operator], type[ast.operator]] = {
    ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult,
    ast.Pow: ast.Mult, ast.FloorDiv: ast.Div, ast.Mod: ast.Mult,
}  # fmt: skip
COMPARISON: dict[type[ast.cmpop], tuple[type[ast.cmpop], ...]] = {
    ast.Lt: (ast.LtE, ast.GtE), ast.LtE: (ast.Lt, ast.Gt), ast.Gt: (ast.GtE, ast.LtE),
    ast.GtE: (ast.Gt, ast.Lt), ast.Eq: (ast.NotEq,), ast.NotEq: (ast.Eq,), ast.Is: (ast.IsNot,),
    ast.IsNot: (ast.Is,), ast.In: (ast.NotIn,), ast.NotIn: (ast.In,),
}  # fmt: skip
PAIRS = (
    ("min", "max"), ("smaller", "larger"), ("minimum", "maximum"), ("sin", "cos"), ("any", "all"),
)  # fmt: skip
COUNTERPART = {a: b for pair in PAIRS for a, b in (pair, pair[::-1])}
NOT_TOUCHED = {"annotation", "returns", "decorator_list", "type_comment"}


@dataclass
class Edit:
    """One change of a tree: ``obj.field`` (or one place of that list) becomes ``value``."""

    kind: str
    shown: ast.AST  # what is printed before and after
    obj: ast.AST
    field: str
    value: Any
    line: int
    last_line: int
    owner: Owner | None
    place: int | None = None

    def apply(self) -> None:
        """Change the tree."""
        if self.place is None:
            setattr(self.obj, self.field, self.value)
        else:
            getattr(self.obj, self.field)[self.place] = self.value


@dataclass
class _Where:
    """Where the walk is: names round it, the outermost function, the lines of the statement."""

    names: tuple[str, ...] = ()
    owner: Owner | None = None
    line: int = 0
    last_line: int = 0
    edits: list[Edit] = field(default_factory=list)

    def add(self, kind: str, shown: ast.AST, obj: ast.AST, name: str, value: Any,
            place: int | None = None) -> None:  # fmt: skip
        line = getattr(shown, "lineno", self.line)
        self.edits.append(
            Edit(kind, shown, obj, name, value, line, self.last_line, self.owner, place)
        )


def edits(tree: ast.Module) -> list[Edit]:
    """List every edit of a module, always in the same order."""
    where = _Where()
    _walk(tree, where)
    return where.edits


def _walk(node: ast.AST, where: _Where) -> None:
    for name, child, place in _children(node):
        kept = where.names, where.owner, where.line, where.last_line
        _enter(child, where)
        _edits_here(node, name, child, place, where)
        _walk(child, where)
        where.names, where.owner, where.line, where.last_line = kept


def _children(node: ast.AST) -> Iterator[tuple[str, ast.AST, int | None]]:
    for name, value in ast.iter_fields(node):
        if name in NOT_TOUCHED:
            continue
        if isinstance(value, list):
            yield from ((name, v, i) for i, v in enumerate(value) if isinstance(v, ast.AST))
        elif isinstance(value, ast.AST):
            yield name, value, None


def _enter(node: ast.AST, where: _Where) -> None:
    if isinstance(node, ast.stmt):
        where.line, where.last_line = node.lineno, node.end_lineno or node.lineno
    if isinstance(node, ast.FunctionDef | ast.Lambda) and where.owner is None:
        own = "<lambda>" if isinstance(node, ast.Lambda) else node.name
        lines = [d.lineno for d in getattr(node, "decorator_list", [])]
        where.owner = ".".join((*where.names, own)), min([node.lineno, *lines])
    if isinstance(node, ast.ClassDef):
        where.names = (*where.names, node.name)


def _edits_here(
    parent: ast.AST, name: str, node: ast.AST, place: int | None, where: _Where
) -> None:
    def swap(kind: str, value: Any) -> None:
        where.add(kind, node, parent, name, value, place)

    match node:
        case ast.BinOp(op=op) if type(op) in ARITHMETIC and not _is_text(node):
            where.add("arithmetic", node, node, "op", ARITHMETIC[type(op)]())
        case ast.Compare(ops=ops):
            for i, op in enumerate(ops):
                for other in COMPARISON[type(op)]:
                    where.add("comparison", node, node, "ops", other(), i)
        case ast.Constant(value=number) if isinstance(number, bool | int | float):
            strict = isinstance(parent, ast.keyword) and parent.arg == "strict"
            for other in _numbers(number):
                swap("strict" if strict else "number", ast.copy_location(ast.Constant(other), node))
        case ast.UnaryOp(op=ast.USub() | ast.Not(), operand=operand):
            swap("sign", operand)
        case ast.BoolOp(op=op):
            where.add(
                "and/or", node, node, "op", ast.Or() if isinstance(op, ast.And) else ast.And()
            )
        case ast.Name(id=word) if word in COUNTERPART:
            swap("counterpart", ast.copy_location(ast.Name(COUNTERPART[word], node.ctx), node))
        case ast.Attribute(attr=word) if word in COUNTERPART:
            where.add("counterpart", node, node, "attr", COUNTERPART[word])
        case ast.Call(keywords=keywords):
            for i, keyword in enumerate(keywords):
                if keyword.arg not in (None, "strict"):
                    where.add("keyword", node, node, "keywords", keywords[:i] + keywords[i + 1 :])
        case ast.If(test=test) | ast.IfExp(test=test) | ast.While(test=test):
            turned = ast.copy_location(ast.UnaryOp(ast.Not(), test), test)
            where.add("condition", test, node, "test", turned)
        case _:
            pass
    if isinstance(node, ast.comprehension):
        for i, test in enumerate(node.ifs):
            turned = ast.copy_location(ast.UnaryOp(ast.Not(), test), test)
            where.add("condition", test, node, "ifs", turned, i)
    if isinstance(node, ast.Return) and node.value is not None:
        for operand in _operands(node.value):
            where.add("operand", node, node, "value", operand)
    if _can_go(node, parent, name, place):
        swap("statement", ast.copy_location(ast.Pass(), node))


def _numbers(number: bool | float) -> list[bool | float]:
    if isinstance(number, bool):
        return [not number]
    if isinstance(number, int):
        return [1 - number if number in (0, 1) else number + 1]
    return [1.0 - number if number in (0.0, 1.0) else number * 1.1 + 0.1]


def _is_text(node: ast.BinOp) -> bool:
    return any(
        isinstance(side, ast.JoinedStr) or isinstance(getattr(side, "value", None), str)
        for side in (node.left, node.right)
        if isinstance(side, ast.JoinedStr | ast.Constant)
    )


def _operands(value: ast.expr) -> list[ast.expr]:
    if isinstance(value, ast.BinOp):
        return [value.left, value.right]
    if isinstance(value, ast.BoolOp):
        return value.values
    if isinstance(value, ast.Call) and isinstance(value.func, ast.Name | ast.Attribute):
        word = getattr(value.func, "id", getattr(value.func, "attr", ""))
        return (
            value.args if word in COUNTERPART and word not in ("sin", "cos", "any", "all") else []
        )
    return []


def _can_go(node: ast.AST, parent: ast.AST, name: str, place: int | None) -> bool:
    if name not in ("body", "orelse") or place is None or isinstance(parent, ast.Module):
        return False
    if isinstance(node, ast.Expr):  # docstrings and bare text stay
        return not isinstance(node.value, ast.Constant)
    return isinstance(node, ast.AugAssign) or (isinstance(node, ast.If) and not node.orelse)


@dataclass(frozen=True)
class Mutant:
    """One edit of one file: ``file`` within the package, ``number`` its place in ``edits``."""

    file: str
    number: int
    kind: str
    line: int
    last_line: int
    owner: Owner | None

    @property
    def key(self) -> str:
        """Name the mutant."""
        return f"{self.file}#{self.number}"


def of_file(root: Path, file: str) -> list[Mutant]:
    """List the mutants of a file."""
    tree = ast.parse((root / file).read_text())
    return [
        Mutant(file, i, e.kind, e.line, e.last_line, e.owner) for i, e in enumerate(edits(tree))
    ]


def words(root: Path, mutant: Mutant) -> tuple[str, str]:
    """Print what a mutant changes: before, after."""
    edit = edits(ast.parse((root / mutant.file).read_text()))[mutant.number]
    if edit.kind == "keyword":
        (gone,) = (k for k in edit.obj.keywords if k not in edit.value)  # type: ignore[attr-defined]
        return f"{ast.unparse(edit.obj.func)}(... {ast.unparse(gone)})", "left out"  # type: ignore[attr-defined]
    shown = edit.shown if edit.obj is not edit.shown else edit.obj
    before = ast.unparse(shown)
    edit.apply()
    after = edit.value if edit.obj is not edit.shown else edit.obj
    return before, ast.unparse(after)


def compiled(root: Path, mutant: Mutant) -> CodeType:
    """Compile the module with the mutant in it."""
    tree = ast.parse((root / mutant.file).read_text())
    edits(tree)[mutant.number].apply()
    ast.fix_missing_locations(tree)
    return compile(tree, str(root / mutant.file), "exec", dont_inherit=True)


def with_reach(root: Path, file: str) -> CodeType:
    """Compile a module that calls ``__reach__(file, line)`` before each statement in a function."""
    tree = ast.parse((root / file).read_text())
    for node in ast.walk(tree):
        for name in ("body", "orelse"):
            block = getattr(node, name, None)
            if isinstance(block, list) and not isinstance(node, ast.Module | ast.ClassDef):
                setattr(node, name, [s for old in block for s in (_mark(file, old), old)])
        if isinstance(node, ast.Lambda):
            mark = _mark(file, node).value
            node.body = ast.Subscript(
                ast.Tuple([mark, node.body], ast.Load()), ast.Constant(1), ast.Load()
            )
    ast.fix_missing_locations(tree)
    return compile(tree, str(root / file), "exec", dont_inherit=True)


def _mark(file: str, node: Any) -> ast.Expr:
    call = ast.Call(
        ast.Name("__reach__", ast.Load()),
        [ast.Tuple([ast.Constant(file), ast.Constant(node.lineno)], ast.Load())],
        [],
    )
    return ast.copy_location(ast.Expr(ast.copy_location(call, node)), node)


def functions_in(code: CodeType) -> dict[Owner, list[CodeType]]:
    """Give the code objects inside a module's code by name and first line."""
    found: dict[Owner, list[CodeType]] = {}
    for inner in code.co_consts:
        if isinstance(inner, CodeType):
            found.setdefault((inner.co_qualname, inner.co_firstlineno), []).append(inner)
            for owner, codes in functions_in(inner).items():
                found.setdefault(owner, []).extend(codes)
    return found
