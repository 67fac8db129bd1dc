//! Shelf entries: alloys, powders, pattern materials, vessels, kilns, ring scales; shipped text and the studio's overlay.
