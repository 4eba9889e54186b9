"""The encoder: six layers of a small sentence encoder, what the rules have made of each word, and a head a question.

The layers are BERT's (Devlin et al. 2019), so that weights trained elsewhere can be loaded into them.
"""

from importlib import import_module
from pathlib import Path
from zipfile import ZipFile

import torch
from safetensors.torch import load, load_file
from torch import Tensor, nn
from torch.nn import functional

from training.layout import Layout

WIDTH, HEADS_OF_ATTENTION, LONGEST = 384, 12, 512
DROP_BEFORE_POINTING = 0.3  # a pointer learns a whole recording by heart sooner than anything else


class Layer(nn.Module):
    """Attention and a feed-forward step, each added to what came in and normalised."""

    def __init__(self, drop: float) -> None:
        super().__init__()
        self.query_key_value = nn.Linear(WIDTH, 3 * WIDTH)
        self.mixed = nn.Linear(WIDTH, WIDTH)
        self.wide = nn.Linear(WIDTH, 4 * WIDTH)
        self.narrow = nn.Linear(4 * WIDTH, WIDTH)
        self.first = nn.LayerNorm(WIDTH, eps=1e-12)
        self.second = nn.LayerNorm(WIDTH, eps=1e-12)
        self.drop = nn.Dropout(drop)

    def forward(self, x: Tensor, shade: Tensor | None) -> Tensor:
        """`x` is (batch, pieces, width); what is shaded (-1e4, else 0) is not looked at."""
        query, key, value = self.query_key_value(x).chunk(3, dim=-1)
        seen = self.attend(query, key, value, shade)
        x = self.first(x + self.drop(self.mixed(seen)))
        return self.second(x + self.drop(self.narrow(functional.gelu(self.wide(x)))))

    def attend(self, query: Tensor, key: Tensor, value: Tensor, shade: Tensor | None) -> Tensor:
        """Attention by many heads, each with its share of the width."""
        heads = (x.unflatten(-1, (HEADS_OF_ATTENTION, -1)).transpose(1, 2) for x in (query, key, value))
        drop = self.drop.p if self.training else 0.0
        seen = functional.scaled_dot_product_attention(*heads, attn_mask=shade, dropout_p=drop)
        return seen.transpose(1, 2).flatten(2)


class Encoder(nn.Module):
    """From pieces of words and sights to one answer a head: (batch, pieces, sum of widths)."""

    def __init__(self, pieces: int, layout: Layout, layers: int = 6, drop: float = 0.1) -> None:
        super().__init__()
        self.layout = layout
        self.pieces = nn.Embedding(pieces, WIDTH)
        self.positions = nn.Embedding(LONGEST, WIDTH)
        self.kind = nn.Parameter(torch.zeros(WIDTH))
        self.norm = nn.LayerNorm(WIDTH, eps=1e-12)
        self.sights = nn.ModuleList(nn.Embedding(size, WIDTH, padding_idx=0) for size in layout.sights.values())
        for table in self.sights:
            nn.init.normal_(table.weight, std=0.002)  # small, or it would drown what the words say
            with torch.no_grad():
                table.weight[0].zero_()
        self.layers = nn.ModuleList(Layer(drop) for _ in range(layers))
        self.drop = nn.Dropout(drop)
        self.answers = nn.Linear(WIDTH, sum(layout.heads.values()) + len(layout.pointers) * len(layout.parts))

    def forward(self, pieces: Tensor, sights: Tensor, there: Tensor | None = None) -> Tensor:
        """`pieces` and `there` are (batch, pieces), `sights` (batch, pieces, sights); all of int64.

        Where `there` is not given, all pieces are.
        """
        x = self.pieces(pieces) + self.positions.weight[: pieces.shape[1]] + self.kind
        for k, table in enumerate(self.sights):
            x = x + table(sights[:, :, k])
        x = self.drop(self.norm(x))
        shade = None
        if there is not None:
            shade = ((1.0 - there.to(x.dtype))[:, None, None, :] * -1e4).expand(-1, 1, x.shape[1], -1)
        for layer in self.layers:
            x = layer(x, shade)
        return self.answer(x)

    def answer(self, x: Tensor) -> Tensor:
        """What heads and pointers say of `x`; while the encoder is fitted, pointers see less of it."""
        if not self.training:
            said: Tensor = self.answers(x)
            return said
        heads = sum(self.layout.heads.values())
        (told, pointed), (over, above) = (each.split([heads, len(each) - heads]) for each in self.answers.parameters())
        less = functional.dropout(x, DROP_BEFORE_POINTING)
        return torch.cat([functional.linear(x, told, over), functional.linear(less, pointed, above)], -1)


def split(answers: Tensor, layout: Layout) -> dict[str, Tensor]:
    """The answers of every head and pointer by name."""
    widths = [*layout.heads.values(), *[len(layout.parts)] * len(layout.pointers)]
    return dict(zip(layout.targets, answers.split(widths, -1), strict=True))


def point(worths: Tensor, parts: Tensor, samples: Tensor) -> Tensor:
    """What every sample is worth: the sum of the parts that it plays. The last axis becomes slots, nobody first.

    `worths` and `parts` are (batch, pieces, parts), `samples` is (batch,): how many samples there are to point at.
    """
    played = (parts > 0).to(worths.dtype)
    played[..., 0] = 1.0
    slots = int(samples.max()) + 1
    sums = worths.new_zeros(*worths.shape[:2], slots).scatter_add(2, parts, worths * played)
    beyond = torch.arange(slots, device=worths.device) > samples[:, None, None]
    return sums.masked_fill(beyond, -1e4)


def base_weights(path: Path | None) -> dict[str, Tensor]:
    """A sentence encoder's weights by BERT's names: from a file, else from the package that carries them."""
    if path:
        return load_file(path)
    package = import_module("all_minilm_l6_v2")
    archive = Path(package.__path__[0]) / "model.zip"
    return load(ZipFile(archive).read("model.safetensors"))


def pretrained(path: Path | None, layout: Layout, layers: int = 6, drop: float = 0.1) -> Encoder:
    """An encoder with a sentence encoder's weights and heads that know nothing yet."""
    weights = {name: values.float() for name, values in base_weights(path).items()}
    encoder = Encoder(len(weights["embeddings.word_embeddings.weight"]), layout, layers, drop)
    state = {
        "pieces.weight": weights["embeddings.word_embeddings.weight"],
        "positions.weight": weights["embeddings.position_embeddings.weight"],
        "kind": weights["embeddings.token_type_embeddings.weight"][0],
        "norm.weight": weights["embeddings.LayerNorm.weight"],
        "norm.bias": weights["embeddings.LayerNorm.bias"],
    }
    names = {
        "mixed": "attention.output.dense", "first": "attention.output.LayerNorm", "wide": "intermediate.dense",
        "narrow": "output.dense", "second": "output.LayerNorm",
    }  # fmt: skip
    for i in range(layers):
        layer = f"encoder.layer.{i}"
        for part in ("weight", "bias"):
            for ours, theirs in names.items():
                state[f"layers.{i}.{ours}.{part}"] = weights[f"{layer}.{theirs}.{part}"]
            parts = [weights[f"{layer}.attention.self.{name}.{part}"] for name in ("query", "key", "value")]
            state[f"layers.{i}.query_key_value.{part}"] = torch.cat(parts)
    missing, unexpected = encoder.load_state_dict(state, strict=False)
    if unexpected or not all(name.startswith(("sights", "answers")) for name in missing):
        raise ValueError(f"these are other weights than the encoder's: {path}")
    return encoder
