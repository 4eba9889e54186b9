"""How the encoder's weights are made from annotated recordings; nothing here is needed to take notes."""
