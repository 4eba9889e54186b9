"""The fitted encoder as the file that the program reads: ONNX, its weights in eight bits, and what its columns mean."""

import hashlib
import json
from pathlib import Path

import onnx
import torch
from onnxruntime.quantization import QuantType, quantize_dynamic

from training.layout import Layout
from training.model import Encoder

NAME = "encoder.onnx"


def export(state: Path, layout: Layout, folder: Path) -> None:
    """Write the encoder into a folder, and beside it what a reader checks before it trusts the file."""
    weights = {name: value.float() for name, value in torch.load(state).items()}
    encoder = Encoder(len(weights["pieces.weight"]), layout).eval()
    encoder.load_state_dict(weights)
    whole = folder / "whole.onnx"
    pieces, there = torch.zeros(2, 64, dtype=torch.int64), torch.ones(2, 64, dtype=torch.int64)
    sights = torch.zeros(2, 64, len(layout.sights), dtype=torch.int64)
    names = ["pieces", "sights", "there"]
    axes = {name: {0: "windows", 1: "pieces"} for name in (*names, "answers")}
    torch.onnx.export(
        encoder, (pieces, sights, there), str(whole), input_names=names, output_names=["answers"],
        dynamic_axes=axes, opset_version=17, dynamo=False,
    )  # fmt: skip
    quantize_dynamic(whole, folder / NAME, weight_type=QuantType.QInt8)
    whole.unlink()
    model = onnx.load(folder / NAME)
    model.producer_name, model.doc_string = "", ""
    onnx.save(model, folder / NAME)
    about = {"sha256": hashlib.sha256((folder / NAME).read_bytes()).hexdigest(), "layout": json.loads(layout.written())}
    (folder / "encoder.json").write_text(json.dumps(about, indent=1) + "\n", encoding="utf-8")
