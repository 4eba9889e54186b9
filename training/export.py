"""The fitted encoder as the file that the program reads: ONNX, its weights in eight bits, and what its columns mean."""

import hashlib
import json
from pathlib import Path
from typing import Any

import onnx
import torch
from onnxruntime.quantization import QuantType, quantize_dynamic
from torch import Tensor

from training.layout import Layout
from training.model import HEADS_OF_ATTENTION, Encoder

NAME = "encoder.onnx"


class Fused(torch.autograd.Function):
    """Attention as the one operation that onnxruntime has for it, which is faster than its steps."""

    @staticmethod
    def forward(_ctx: object, query: Tensor, _key: Tensor, _value: Tensor) -> Tensor:
        """Only the shape matters while exporting."""
        return query.clone()

    @staticmethod
    def symbolic(graph: Any, query: Any, key: Any, value: Any) -> Any:
        """The operation in the file."""
        fused = graph.op("com.microsoft::MultiHeadAttention", query, key, value, num_heads_i=HEADS_OF_ATTENTION)
        return fused.setType(query.type())


def export(state: Path, layout: Layout, folder: Path) -> None:
    """Write the encoder into a folder, and beside it what a reader checks before it trusts the file."""
    weights = {name: value.float() for name, value in torch.load(state).items()}
    encoder = Encoder(len(weights["pieces.weight"]), layout).eval()
    encoder.load_state_dict(weights)
    for layer in encoder.layers:
        layer.attend = lambda query, key, value, _shade: Fused.apply(query, key, value)
    whole = folder / "whole.onnx"
    pieces = torch.zeros(2, 64, dtype=torch.int64)
    sights = torch.zeros(2, 64, len(layout.sights), dtype=torch.int64)
    names = ["pieces", "sights"]
    axes = {name: {0: "windows", 1: "pieces"} for name in (*names, "answers")}
    torch.onnx.export(
        encoder, (pieces, sights), str(whole), input_names=names, output_names=["answers"],
        dynamic_axes=axes, opset_version=17, dynamo=False, custom_opsets={"com.microsoft": 1},
    )  # fmt: skip
    quantize_dynamic(whole, folder / NAME, weight_type=QuantType.QInt8)
    whole.unlink()
    model = onnx.load(folder / NAME)
    model.producer_name, model.doc_string = "", ""
    onnx.save(model, folder / NAME)
    about = {"sha256": hashlib.sha256((folder / NAME).read_bytes()).hexdigest(), "layout": json.loads(layout.written())}
    (folder / "encoder.json").write_text(json.dumps(about, indent=1) + "\n", encoding="utf-8")
