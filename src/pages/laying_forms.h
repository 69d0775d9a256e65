/* laying_forms.h - the laying table as data. */
#ifndef PAGES_LAYING_FORMS_H
#define PAGES_LAYING_FORMS_H
#include "spezzato/laying.h"

spz_status laying_csv(const spz_laying *laying, spz_document **out);
#endif
