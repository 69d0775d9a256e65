#include "pages/drawings/label_space.h"
#include "support/text/utf8.h"
#include <math.h>
#include <string.h>

static const double letter = 0.62, bold_letter = 0.67, ascent = 0.76, descent = 0.2; /* of the size of the type */
static const double air = 2; /* units between words and what stands beside them */

void label_space_free(LabelSpace *room)
{
    array_free(&room->taken);
}

bool label_space_take(LabelSpace *room, Box box)
{
    return array_push(&room->taken, box);
}

Box box_around(double x, double y, double width, double height)
{
    return (Box){x - width / 2, y - height / 2, x + width / 2, y + height / 2};
}

Box box_of_words(const char *words, double x, double y, double size, bool bold)
{
    double half = (double)utf8_columns(words, strlen(words)) * size * (bold ? bold_letter : letter) / 2;
    return (Box){x - half, y - ascent * size, x + half, y + descent * size};
}

double label_space_covered(const LabelSpace *room, Box box)
{
    double area = 0;
    box = (Box){box.left - air, box.top - air, box.right + air, box.bottom + air};
    for (size_t i = 0; i < room->taken.count; i++) {
        const Box *other = &room->taken.at[i];
        double width = fmin(box.right, other->right) - fmax(box.left, other->left),
               height = fmin(box.bottom, other->bottom) - fmax(box.top, other->top);
        if (width > 0 && height > 0)
            area += width * height;
    }
    return area;
}
